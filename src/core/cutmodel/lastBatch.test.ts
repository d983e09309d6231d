import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { aStudy } from '../../../test/builders.ts';
import { readCardOf } from '../../../test/samples/earlier.ts';
import { toCutStudy } from '../study/toCutStudy.ts';
import type { StudyCell } from './cutStudy.ts';
import { fit } from './fit.ts';
import { fitStudy } from './fitStudy.ts';
import { hasManySheets, lastBatchOf } from './lastBatch.ts';

/** Batches of three sheets, each cutting at a level of its own. */
const cellsOf = (levels: readonly number[]): readonly StudyCell[] =>
  levels.flatMap((level, n) =>
    [1, 2, 3].flatMap((k) => {
      const { card, events } = readCardOf('CARD', 100 * n + k, { level });
      const { cells } = toCutStudy(aStudy({ cards: [card], events }));
      return cells.map((cell) => ({ ...cell, batch: String(n), sheet: String(k) }));
    }),
  );
const studyOf = (levels: readonly number[]) =>
  plainStudy({ cells: cellsOf(levels), ask: { powerPct: 30 } });

describe('the fit of a study of many batches', () => {
  it('is of all of them together where they are few', () => {
    const study = studyOf([1, 1.05]);
    const { cellIndices, study: fitted } = fit(study);
    expect(hasManySheets(study)).toBe(false);
    expect(fitted).toBe(study);
    expect(cellIndices).toEqual(study.cells.map((_, i) => i));
  });

  it('is not taken apart where there is one batch', () => {
    expect(lastBatchOf(studyOf([1]))).toBeNull();
  });

  it('settles with ten batches that lie far apart, on the cells of the last', () => {
    const study = studyOf([0.6, 1.7, 0.75, 1.4, 0.9, 1.2, 0.65, 1.5, 0.8, 1]);
    const { posterior, study: fitted, cellIndices } = fit(study);
    expect(posterior.converged).toBe(true);
    expect(cellIndices.map((i) => study.cells[i])).toEqual(fitted.cells);
    const answer = fitStudy(study);
    expect(answer.convergence.ok).toBe(true);
    // True of the last batch: half come out at 17 mm/s, scatter 8 %, sheets 1.5 % apart: 97 in 100 at 14.6 mm/s.
    expect(answer.recommended?.speedMmPerS ?? 0).toBeGreaterThan(0.88 * 14.6);
    expect(answer.recommended?.speedMmPerS ?? 99).toBeLessThanOrEqual(14.6);
    for (const { cellIndex } of answer.remarks) expect(study.cells[cellIndex]?.batch).toBe('9');
  });
});
