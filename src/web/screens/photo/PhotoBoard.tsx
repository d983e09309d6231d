import { useEffect, useRef } from 'react';
import type { Card, Cell } from '../../../core/card/card.ts';
import { shapeBoxMm } from '../../../core/card/testShapes.ts';
import { readingText, photoText as words } from '../../../words/texts.ts';
import { leastBoardWidth } from '../../parts/reader/leastBoardWidth.ts';
import { inReadingOrder } from '../../parts/reader/neighbours.ts';
import { needsLook, type CellToUse } from './cellsToUse.ts';

export interface PhotoBoardProps {
  readonly card: Card;
  /** The card in its own frame. */
  readonly shown: ImageData;
  readonly cells: readonly CellToUse[];
  readonly onTap: (cell: string) => void;
}

/** The card as the photograph shows it, flattened, with what was read on each shape; a tap corrects it. */
export const PhotoBoard = ({ card, shown, cells, onTap }: PhotoBoardProps) => {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    canvas.current?.getContext('2d')?.putImageData(shown, 0, 0);
  }, [shown]);
  return (
    <div className="reader-scroll">
      <div
        className="photo-board"
        role="group"
        aria-label={words.board(card.code)}
        style={{ minWidth: leastBoardWidth(card) }}
      >
        <canvas ref={canvas} width={shown.width} height={shown.height} aria-hidden="true" />
        {inReadingOrder(card.cells).map((cell) => {
          const read = cells.find((one) => one.cell === cell.id);
          return read === undefined ? null : (
            <PhotoCell key={cell.id} card={card} cell={cell} read={read} onTap={onTap} />
          );
        })}
      </div>
    </div>
  );
};

interface PhotoCellProps {
  readonly card: Card;
  readonly cell: Cell;
  readonly read: CellToUse;
  readonly onTap: (cell: string) => void;
}

const PhotoCell = ({ card, cell, read, onTap }: PhotoCellProps) => {
  const box = shapeBoxMm(card.shape, card.sizeMm);
  const share = (mm: number, ofMm: number): string => `${String((mm / ofMm) * 100)}%`;
  const { grade, isCorrected, sure } = read;
  const said = grade === undefined ? words.cantTellInFull : readingText.grades[grade];
  const how = isCorrected ? words.corrected : words.sureInFull(sure);
  return (
    <button
      type="button"
      data-photo-cell={cell.id}
      data-state={grade ?? 'cant-tell'}
      className={needsLook(read) ? 'photo-cell photo-cell-look' : 'photo-cell'}
      aria-label={words.cell(cell.id, said, how)}
      onClick={() => onTap(cell.id)}
      style={{
        left: share(cell.xMm, card.widthMm),
        top: share(card.heightMm - cell.yMm, card.heightMm),
        width: share(box.widthMm + 2, card.widthMm),
        height: share(box.heightMm + 2, card.heightMm),
      }}
    >
      <span className="photo-said">
        <b>{grade === undefined ? words.cantTell : readingText.grades[grade]}</b>
        <br />
        {grade === undefined ? cell.id : isCorrected ? words.corrected : words.sure(sure)}
      </span>
    </button>
  );
};
