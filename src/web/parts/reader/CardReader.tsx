import { useRef, useState, type KeyboardEvent, type SyntheticEvent } from 'react';
import type { EdgeKind } from '../../../core/reading/edge.ts';
import type { FlawKind } from '../../../core/stock/flawKind.ts';
import { readingText as words } from '../../../words/texts.ts';
import { useDraft } from '../../state/useDraft.ts';
import { SheetPicture } from '../sheet/SheetPicture.tsx';
import { CellButton } from './CellButton.tsx';
import { CellStrip, type Asking } from './CellStrip.tsx';
import { leastBoardWidth } from './leastBoardWidth.ts';
import { KeyHelp } from './KeyHelp.tsx';
import { inReadingOrder, neighbour, type Direction } from './neighbours.ts';
import { ReadingTools } from './ReadingTools.tsx';
import type { Reading } from './useReading.ts';
import './reader.css';

const arrows: Readonly<Record<string, Direction>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

export interface CardReaderProps {
  readonly reading: Reading;
  /** What is wrong with such a sheet where it never comes out. Told, since the names of all materials are heavy. */
  readonly flaws: FlawKind;
  /** How edges of such a sheet are graded; undefined: they are not. */
  readonly edges: EdgeKind | undefined;
}

/** The card on the bench, to be read with a thumb or with keys; below it what is said of the chosen cell. */
export const CardReader = ({ reading, flaws, edges }: CardReaderProps) => {
  const { card, cells } = reading;
  const order = inReadingOrder(card.cells);
  // A shape whose setting is being typed is still there after a reload, as what was typed is.
  const [typing, setTyping, typingEnds] = useDraft<{ readonly cell?: string }>({
    name: `typing.${card.code}`,
    initial: {},
  });
  const [chosen, setChosen] = useState(typing.cell);
  const [asking, setAsking] = useState<Asking>(typing.cell === undefined ? 'grade' : 'as-cut');
  const board = useRef<HTMLDivElement>(null);
  const stop = chosen ?? order[0]?.id;
  const chosenCell = cells.find(({ id }) => id === chosen);

  const ask = (next: Asking): void => {
    setAsking(next);
    if (next === 'as-cut' && chosen !== undefined) setTyping({ cell: chosen });
    else typingEnds();
  };
  const turnTo = (id: string): void => {
    if (id !== chosen) ask('grade');
    setChosen(id);
  };
  const choose = (id: string): void => {
    turnTo(id);
    board.current?.querySelector<HTMLButtonElement>(`[data-cell="${id}"]`)?.focus();
  };
  const press = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const from = card.cells.find(({ id }) => id === stop);
    const direction = arrows[event.key];
    if (direction !== undefined && from !== undefined) {
      event.preventDefault();
      const next = neighbour(card.cells, from, direction);
      if (next !== undefined) choose(next.id);
      return;
    }
    if (stop === undefined) return;
    if (event.key.toLowerCase() === 'x') {
      setChosen(stop);
      ask('why-spoilt');
      event.preventDefault();
    } else if (say(reading, stop, event.key)) {
      event.preventDefault();
    }
  };

  return (
    <div className="reader">
      <div className="reader-scroll">
        {/* What is done to a cell's button bubbles up to here. */}
        <div
          className="reader-board"
          ref={board}
          role="group"
          aria-label={words.card(card.code, card.cells.length)}
          style={{ minWidth: leastBoardWidth(card) }}
          onKeyDown={press}
          onFocus={(event) => {
            const id = cellUnder(event);
            if (id !== undefined) turnTo(id);
          }}
          onClick={(event) => {
            const id = cellUnder(event);
            if (id !== undefined) reading.step(id);
          }}
        >
          <SheetPicture card={card} cells={cells} words="elsewhere" />
          {order.map((cell) => (
            <CellButton
              key={cell.id}
              card={card}
              cell={cell}
              asRead={cells.find(({ id }) => id === cell.id)}
              isStop={cell.id === stop}
              isChosen={cell.id === chosen}
            />
          ))}
        </div>
      </div>
      <ReadingTools reading={reading} />
      <CellStrip
        reading={reading}
        cell={chosenCell}
        asking={asking}
        flaws={flaws}
        edges={edges}
        onAsk={ask}
      />
      <KeyHelp />
    </div>
  );
};

/** The cell on whose button something happened. */
const cellUnder = ({ target }: SyntheticEvent): string | undefined =>
  target instanceof Element
    ? (target.closest('[data-cell]')?.getAttribute('data-cell') ?? undefined)
    : undefined;

/** What a letter key says of a cell. True where it said something. */
const say = (reading: Reading, cell: string, key: string): boolean => {
  switch (key.toLowerCase()) {
    case 'o':
    case '1':
      reading.grade(cell, 'out');
      return true;
    case 'h':
    case '2':
      reading.grade(cell, 'hangs');
      return true;
    case 's':
    case '3':
      reading.grade(cell, 'stays');
      return true;
    case 'backspace':
    case 'delete':
      reading.clear(cell);
      return true;
    case 'u':
      reading.undo?.();
      return true;
    default:
      return false;
  }
};
