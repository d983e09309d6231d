import type { CutStudy, StudyCell } from '../cutmodel/cutStudy.ts';
import { airKey } from '../machine/air.ts';

export interface CellGroup {
  readonly name: string;
  /** Indices of the cells. */
  readonly cells: readonly number[];
}

/** How the card is called that a cell of the study stands on. */
export type CardOf = (cellIndex: number) => string;

/** Read cells by a key, in the order of their first; each group has the name of its first cell. */
const grouped = (
  cells: readonly StudyCell[],
  keyOf: (cell: StudyCell, index: number) => string,
  nameOf: (cell: StudyCell, index: number) => string,
): readonly CellGroup[] => {
  const groups = new Map<string, { readonly name: string; readonly cells: number[] }>();
  cells.forEach((cell, i) => {
    if (cell.grade === undefined && cell.spoilt === undefined) return;
    const key = keyOf(cell, i);
    const group = groups.get(key);
    if (group) group.cells.push(i);
    else groups.set(key, { name: nameOf(cell, i), cells: [i] });
  });
  return [...groups.values()];
};

const sheetOf = ({ batch = '', sheet = '' }: StudyCell): string => `${batch}/${sheet}`;

/** Cells of one setting on one card. */
export const rungsOf = ({ cells }: CutStudy, cardOf: CardOf): readonly CellGroup[] =>
  grouped(
    cells,
    (cell, i) =>
      [
        cardOf(i),
        sheetOf(cell),
        cell.powerPct,
        cell.minPowerPct ?? cell.powerPct,
        cell.speedMmPerS,
        cell.passes,
        airKey(cell.air),
      ].join('|'),
    (_, i) => cardOf(i),
  );

/** Cells of one card. */
export const cardsOf = ({ cells }: CutStudy, cardOf: CardOf): readonly CellGroup[] =>
  grouped(
    cells,
    (cell, i) => `${cardOf(i)}|${sheetOf(cell)}`,
    (_, i) => cardOf(i),
  );

/** Earlier cells of one batch. */
export const earlierBatchesOf = ({ history = [] }: CutStudy): readonly CellGroup[] =>
  grouped(
    history,
    ({ batch = '' }) => batch,
    ({ batch = '' }) => batch,
  );
