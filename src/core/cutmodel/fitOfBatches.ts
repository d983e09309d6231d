import type { CutStudy } from './cutStudy.ts';
import { fit, type Fit } from './fit.ts';
import { withEarlierCells } from './withEarlierCells.ts';

export interface FitOfBatches {
  readonly found: Fit;
  /** Where each cell of the fit stands in the study that was given. */
  readonly cellIndices: readonly number[];
}

/** Each sheet is one more unknown: with nine a fit takes half a second, with thirty five, and some do not settle. */
const mostSheetsAtOnce = 9;

/**
 * The fit of a study that may hold cells of many batches. Where there are too many sheets for one posterior, or it does not
 * settle, the cells of batches before the last one cut are taken as earlier sheets, which teach the same things with fewer
 * unknowns.
 */
export const fitOfBatches = (study: CutStudy): FitOfBatches => {
  const last = study.cells.at(-1)?.batch;
  const all = study.cells.map((_, index) => index);
  const isOwn = (index: number): boolean => study.cells[index]?.batch === last;
  const before = study.cells.filter((_, index) => !isOwn(index));
  const sheets = new Set(study.cells.map(({ batch, sheet }) => JSON.stringify([batch, sheet])));
  if (sheets.size <= mostSheetsAtOnce || before.length === 0) {
    const found = fit(study);
    if (found.posterior.converged || before.length === 0) return { found, cellIndices: all };
  }
  const own = study.cells.filter((_, index) => isOwn(index));
  return {
    found: fit(withEarlierCells({ ...study, cells: own }, before)),
    cellIndices: all.filter(isOwn),
  };
};
