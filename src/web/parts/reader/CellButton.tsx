import { memo } from 'react';
import type { Card, Cell } from '../../../core/card/card.ts';
import { cellWordLines } from '../../../core/card/settingWords.ts';
import { shapeBoxMm } from '../../../core/card/testShapes.ts';
import { settingKey } from '../../../core/machine/setting.ts';
import type { CellAsRead } from '../../../core/reading/readingEvent.ts';
import { readingText as words } from '../../../words/texts.ts';
import { CellSpeed } from './CellSpeed.tsx';

export interface CellButtonProps {
  readonly card: Card;
  readonly cell: Cell;
  readonly asRead: CellAsRead | undefined;
  /** Whether the Tab key stops here. */
  readonly isStop: boolean;
  readonly isChosen: boolean;
}

/** What stands in a cell, in a word. */
const stateWord = (reading: CellAsRead['reading']): string => {
  if (reading.kind === 'graded') {
    const { grade, edge } = reading;
    return edge === undefined
      ? words.grades[grade]
      : `${words.grades[grade]} ${words.edges[edge.edge]}`;
  }
  return reading.kind === 'spoilt' ? words.spoilt : words.unread;
};

const leastWidthMm = 17;

const Button = ({ card, cell, asRead, isStop, isChosen }: CellButtonProps) => {
  if (asRead === undefined) return null;
  const [, power] = cellWordLines(asRead.setting);
  const { reading } = asRead;
  const box = shapeBoxMm(card.shape, card.sizeMm);
  const share = (mm: number, ofMm: number): string => `${String((mm / ofMm) * 100)}%`;
  return (
    <button
      type="button"
      data-cell={cell.id}
      data-state={reading.kind === 'graded' ? reading.grade : reading.kind}
      className={isChosen ? 'cell-button cell-button-chosen' : 'cell-button'}
      tabIndex={isStop ? 0 : -1}
      style={{
        left: share(cell.xMm, card.widthMm),
        top: share(card.heightMm - cell.yMm, card.heightMm),
        width: share(Math.max(box.widthMm + 3, leastWidthMm), card.widthMm),
        height: share(box.heightMm + 1, card.heightMm),
      }}
    >
      <span className="cell-words">
        <CellSpeed setting={asRead.setting} />
        <br />
        {power} <b>{cell.id}</b>
        {asRead.corrected ? <i title={words.corrected}> *</i> : null}
      </span>{' '}
      <span className={reading.kind === 'unread' ? 'unseen' : 'cell-state'}>
        {stateWord(reading)}
      </span>
    </button>
  );
};

/** The place of one cell on the board: its shape and its words, all of it to be tapped. What a tap does is the board's. */
export const CellButton = memo(
  Button,
  (before, after) =>
    before.card === after.card &&
    before.cell === after.cell &&
    before.isStop === after.isStop &&
    before.isChosen === after.isChosen &&
    standing(before.asRead) === standing(after.asRead),
);

/** Equal for cells that look alike: most cells are untouched by a tap, and are not drawn again. */
const standing = (asRead: CellAsRead | undefined): string =>
  asRead === undefined
    ? ''
    : `${JSON.stringify(asRead.reading)}/${settingKey(asRead.setting)}/${String(asRead.corrected)}`;
