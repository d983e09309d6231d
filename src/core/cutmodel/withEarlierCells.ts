import { beliefsAfter } from './beliefsAfter.ts';
import type { CutStudy, StudyCell } from './cutStudy.ts';

/** Sheets that stand in the model itself; what those before them taught comes in as beliefs. */
export const mostSheetsInModel = 6;

/** A study with cells of earlier sheets behind it, given oldest first, each naming its batch and sheet. */
export const withEarlierCells = (study: CutStudy, cells: readonly StudyCell[]): CutStudy => {
  const sheets = sheetsOf(cells);
  const older = sheets.slice(0, -mostSheetsInModel);
  return {
    ...study,
    history: [...(study.history ?? []), ...sheets.slice(-mostSheetsInModel).flat()],
    ...(older.length > 0 ? { beliefs: beliefsAfter(study, older) } : {}),
  };
};

const sheetsOf = (cells: readonly StudyCell[]): readonly (readonly StudyCell[])[] => {
  const sheets = new Map<string, StudyCell[]>();
  for (const cell of cells) {
    const key = JSON.stringify([cell.batch, cell.sheet]);
    sheets.set(key, [...(sheets.get(key) ?? []), cell]);
  }
  return [...sheets.values()];
};
