import type { CutStudy, StudyCell } from './cutStudy.ts';
import { fit, type Fit } from './fit.ts';
import { withEarlierCells } from './withEarlierCells.ts';

export interface SettledFit {
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
export const settledFit = (study: CutStudy): SettledFit => {
  const last = study.cells.at(-1)?.batch;
  const isOwn = ({ batch }: StudyCell): boolean => batch === last;
  const all = study.cells.map((_, index) => index);
  const own = study.cells.filter(isOwn);
  const before = study.cells.filter((cell) => !isOwn(cell));
  const sheets = new Set(study.cells.map(({ batch, sheet }) => JSON.stringify([batch, sheet])));
  if (sheets.size <= mostSheetsAtOnce || before.length === 0) {
    const found = fit(study);
    if (found.posterior.converged || before.length === 0) return { found, cellIndices: all };
  }
  return {
    found: fit(withEarlierCells({ ...study, cells: own }, before)),
    cellIndices: all.filter((index) => study.cells[index]?.batch === last),
  };
};
