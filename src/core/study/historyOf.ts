import type { StudyCell } from '../cutmodel/cutStudy.ts';
import { isFlaw } from '../reading/grade.ts';
import type { EarlierCut, EarlierSheet } from './earlierSheet.ts';

/** Earlier sheets as the cut model takes them: shapes that were cut alike and ended alike as one. */
export const historyOf = (sheets: readonly EarlierSheet[]): readonly StudyCell[] =>
  sheets.flatMap(({ of, batch, sheet, cuts }) =>
    cuts.map(({ cell, count }): StudyCell => ({
      ...cell,
      batch,
      sheet,
      count,
      ...(of === 'order' ? { counted: true } : {}),
    })),
  );

/** How much an answer leans on. */
export interface EarlierCount {
  /** Read cells that say something: graded, or lost to a flaw. */
  readonly cells: number;
  /** Sheets that these cells were cut from. */
  readonly sheets: number;
  /** Parts of orders. */
  readonly parts: number;
  readonly orders: number;
}

export const countEarlier = (sheets: readonly EarlierSheet[]): EarlierCount => {
  const cards = sheets.filter(({ of }) => of === 'cards');
  const orders = sheets.filter(({ of }) => of === 'order');
  return {
    cells: shapesThatSay(cards),
    sheets: cards.length,
    parts: shapesThatSay(orders),
    orders: orders.length,
  };
};

/** A cell spoilt by a clip, say, stands there with its reason and counts for nothing. */
const saysSomething = ({ cell: { grade, spoilt } }: EarlierCut): boolean =>
  spoilt === undefined ? grade !== undefined : isFlaw(spoilt);

export const shapesThatSay = (sheets: readonly EarlierSheet[]): number =>
  sheets.reduce(
    (sum, { cuts }) => sum + cuts.filter(saysSomething).reduce((n, cut) => n + cut.count, 0),
    0,
  );
