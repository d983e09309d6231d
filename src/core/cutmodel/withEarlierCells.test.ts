import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { StudyCell } from './cutStudy.ts';
import { mostSheetsInModel, withEarlierCells } from './withEarlierCells.ts';

const study = plainStudy({ ask: { powerPct: 30 } });
const sheetOf = (n: number): readonly StudyCell[] =>
  [12, 14, 16, 18, 20, 22].map((speedMmPerS, i) => ({
    powerPct: 30,
    speedMmPerS,
    passes: 1,
    batch: `batch ${String(Math.floor(n / 3))}`,
    sheet: `sheet ${String(n)}`,
    grade: i < 3 + (n % 2) ? 'out' : 'stays',
  }));
const cellsOf = (sheets: number) => Array.from({ length: sheets }, (_, n) => sheetOf(n)).flat();

describe('a study with cells of earlier sheets behind it', () => {
  it('has up to six sheets in the model itself, and no more beliefs than before', () => {
    const cells = cellsOf(mostSheetsInModel);
    expect(withEarlierCells(study, cells)).toEqual({ ...study, history: cells });
  });

  it('takes the newest six whole, and what those before them taught', () => {
    const { history = [], beliefs } = withEarlierCells(study, cellsOf(9));
    expect([...new Set(history.map(({ sheet }) => sheet))]).toEqual(
      [3, 4, 5, 6, 7, 8].map((n) => `sheet ${String(n)}`),
    );
    expect(beliefs?.lnSigma.sd).toBeLessThan(0.5);
  });

  it('loses no cell of the newest, however they lie among one another', () => {
    fc.assert(
      fc.property(fc.nat(6), fc.integer(), (sheets, seed) => {
        const cells = fc
          .sample(fc.shuffledSubarray(cellsOf(sheets), { minLength: 6 * sheets }), {
            seed,
            numRuns: 1,
          })
          .flat();
        expect(new Set(withEarlierCells(study, cells).history)).toEqual(new Set(cells));
      }),
    );
  });
});
