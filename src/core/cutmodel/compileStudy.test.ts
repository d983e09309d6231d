import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { Grade } from '../reading/grade.ts';
import { compileStudy } from './compileStudy.ts';

describe('a compiled study', () => {
  it('relates power to the asked one, thickness to the stock’s, and merges equal cells', () => {
    const twin = { powerPct: 60, speedMmPerS: 12, grade: 'out' as const, thicknessMm: 3.3 };
    const { model, p0Pct, observationOfCell } = compileStudy(
      plainStudy({ cells: [twin, twin], ask: { powerPct: 30 } }),
    );
    expect(p0Pct).toBe(30);
    expect(model.observations).toHaveLength(1);
    expect(model.observations[0]).toMatchObject({ outcome: 'out', count: 2, lengths: 1 });
    expect(model.observations[0]?.lnPower).toBeCloseTo(Math.LN2, 12);
    expect(model.observations[0]?.lnThickness).toBeCloseTo(Math.log(1.1), 12);
    expect(observationOfCell).toEqual([0, 0]);
  });

  it('counts a glue pocket as a flaw and any other reason for nothing', () => {
    const { model } = compileStudy(
      plainStudy({
        cells: [
          { powerPct: 30, speedMmPerS: 12, spoilt: 'glue-pocket' },
          { powerPct: 30, speedMmPerS: 12, spoilt: 'clip' },
        ],
      }),
    );
    expect(model.observations.map(({ outcome }) => outcome)).toEqual(['flaw']);
  });

  it('never takes an earlier sheet’s batch for the present one', () => {
    const { model, current } = compileStudy(
      plainStudy({
        history: [{ powerPct: 30, speedMmPerS: 12, passes: 1, batch: 'A', grade: 'out' }],
        cells: [{ powerPct: 30, speedMmPerS: 14, batch: 'A', grade: 'out' }],
      }),
    );
    expect(model.batches).toBe(2);
    expect(model.observations.map(({ batch }) => batch)).toEqual([0, 1]);
    expect(current.batch).toBe(1);
  });

  it('loses no graded cell, whatever was cut', () => {
    const cell = fc.record({
      powerPct: fc.integer({ min: 1, max: 100 }),
      speedMmPerS: fc.double({ min: 0.1, max: 200, noNaN: true }),
      grade: fc.constantFrom<Grade>('out', 'hangs', 'stays'),
      sheet: fc.constantFrom('1', '2'),
    });
    fc.assert(
      fc.property(fc.array(cell, { maxLength: 30 }), (cells) => {
        const { model } = compileStudy(plainStudy({ cells }));
        expect(model.observations.reduce((sum, { count }) => sum + count, 0)).toBe(cells.length);
      }),
    );
  });
});
