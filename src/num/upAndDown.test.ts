import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { dixonMood, type UpDownTrial } from './upAndDown.ts';

/** A series that steps up after a failure and down after a response. */
const series = (
  responses: readonly boolean[],
  { start, step, sign }: { readonly start: number; readonly step: number; readonly sign: 1 | -1 },
): readonly UpDownTrial[] => {
  let level = start;
  return responses.map((responded) => {
    const trial = { level, responded };
    level += responded ? -sign * step : sign * step;
    return trial;
  });
};

describe('dixonMood', () => {
  it('does the published arithmetic', () => {
    // Hamada, Mang & Hoff 2019, Table 1, at the nominal levels; by hand: N = 11, A = 21, B = 51.
    const x = [
      1.405, 1.455, 1.405, 1.455, 1.505, 1.555, 1.505, 1.555, 1.605, 1.555, 1.505, 1.455, 1.505,
      1.455, 1.505, 1.455, 1.505, 1.555, 1.605, 1.555, 1.505, 1.555, 1.605, 1.555, 1.605,
    ];
    const y = '0100010011101010001100101';
    const trials = x.map((level, i) => ({ level, responded: y[i] === '1' }));
    const found = dixonMood(trials, { step: 0.05, risesWithLevel: true });
    expect(found?.sums).toEqual([11, 21, 51]);
    expect(found?.mean).toBeCloseTo(1.455 + 0.05 * (21 / 11 - 0.5), 12);
    expect(found?.sd).toBeCloseTo(1.62 * 0.05 * ((11 * 51 - 21 * 21) / 121 + 0.029), 12);
  });

  it('moves with the scale, and mirrors where the response falls instead of rises', () => {
    const responses = fc.array(fc.boolean(), { minLength: 4, maxLength: 30 });
    fc.assert(
      fc.property(responses, (given) => {
        fc.pre(given.includes(true) && given.includes(false));
        const up = dixonMood(series(given, { start: 20, step: 2, sign: 1 }), {
          step: 2,
          risesWithLevel: true,
        });
        const down = dixonMood(series(given, { start: -20, step: 2, sign: -1 }), {
          step: 2,
          risesWithLevel: false,
        });
        const big = dixonMood(series(given, { start: 200, step: 20, sign: 1 }), {
          step: 20,
          risesWithLevel: true,
        });
        expect(down?.mean).toBeCloseTo(-(up?.mean ?? NaN), 9);
        expect(down?.sd).toBeCloseTo(up?.sd ?? NaN, 9);
        expect(big?.mean).toBeCloseTo(10 * (up?.mean ?? NaN), 9);
        expect(up?.sdFormulaHolds).toBe((up?.ratio ?? 0) > 0.3);
      }),
    );
  });

  it('says nothing of a series without trials', () => {
    expect(dixonMood([], { step: 1, risesWithLevel: true })).toBeNull();
  });
});
