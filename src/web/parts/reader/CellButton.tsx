import type { Card, Cell } from '../../../core/card/card.ts';
import { cellWordLines } from '../../../core/card/settingWords.ts';
import { shapeBoxMm } from '../../../core/card/testShapes.ts';
import type { CellAsRead } from '../../../core/reading/readingEvent.ts';
import { readingText as words } from '../../../words/en/screens/reading.ts';

export interface CellButtonProps {
  readonly card: Card;
  readonly cell: Cell;
  readonly asRead: CellAsRead | undefined;
  /** Whether the Tab key stops here. */
  readonly isStop: boolean;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
  readonly onStep: () => void;
}

/** What stands in a cell, in a word. */
export const stateWord = (reading: CellAsRead['reading']): string => {
  if (reading.kind === 'graded') return words.grades[reading.grade];
  return reading.kind === 'spoilt' ? words.spoilt : words.unread;
};

/** The place of one cell on the board: its shape and its words, all of it to be tapped. */
export const CellButton = (props: CellButtonProps) => {
  const { card, cell, asRead, isStop, isChosen, onChoose, onStep } = props;
  if (asRead === undefined) return null;
  const [speed, power] = cellWordLines(asRead.setting);
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
        width: share(Math.max(box.widthMm + 3, 17), card.widthMm),
        height: share(box.heightMm + 1, card.heightMm),
      }}
      onFocus={onChoose}
      onClick={onStep}
    >
      <span className="cell-words">
        {speed}
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
