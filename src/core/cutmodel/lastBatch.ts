import type { CutStudy } from './cutStudy.ts';
import { withEarlierCells } from './withEarlierCells.ts';

/** A study whose own cells are those of its last batch; those of the batches before it are earlier sheets. */
export interface LastBatch {
  readonly study: CutStudy;
  /** Where each of its cells stands in the study that was given. */
  readonly cellIndices: readonly number[];
}

/** With more sheets of several batches the last batch is taken by itself at once. */
const mostSheetsAtOnce = 9;

/** Whether a study has so many sheets that its batches are taken apart without trying them together. */
export const hasManySheets = ({ cells }: CutStudy): boolean =>
  new Set(cells.map(({ batch, sheet }) => JSON.stringify([batch, sheet]))).size > mostSheetsAtOnce;

/**
 * Earlier batches teach the same things as earlier sheets with fewer unknowns than as effects of their own. Null where there
 * is one batch.
 */
export const lastBatchOf = (study: CutStudy): LastBatch | null => {
  const last = study.cells.at(-1)?.batch;
  const isOwn = ({ batch }: CutStudy['cells'][number]): boolean => batch === last;
  const before = study.cells.filter((cell) => !isOwn(cell));
  if (before.length === 0) return null;
  return {
    study: withEarlierCells({ ...study, cells: study.cells.filter(isOwn) }, before),
    cellIndices: study.cells.flatMap((cell, index) => (isOwn(cell) ? [index] : [])),
  };
};
