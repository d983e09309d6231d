import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { leastSquares, type Residuals } from './leastSquares.ts';

/** y = p₀·(1 − e^(−p₁x)), the Misra1a form of NIST’s Statistical Reference Datasets. */
const growth =
  (data: readonly (readonly [y: number, x: number])[]) =>
  ([a = NaN, b = NaN]: readonly number[]): Residuals => ({
    values: data.map(([y, x]) => a * (1 - Math.exp(-b * x)) - y),
    slopes: data.map(([, x]) => [1 - Math.exp(-b * x), a * x * Math.exp(-b * x)]),
  });

describe('leastSquares', () => {
  it('gives the certified values of NIST StRD Misra1a, from the far start', () => {
    const fit = leastSquares(
      growth([
        [10.07, 77.6],
        [14.73, 114.9],
        [17.94, 141.1],
        [23.93, 190.8],
        [29.61, 239.9],
        [35.18, 289.0],
        [40.02, 332.8],
        [44.82, 378.4],
        [50.76, 434.8],
        [55.05, 477.3],
        [61.01, 536.8],
        [66.4, 593.1],
        [75.47, 689.1],
        [81.78, 760.0],
      ]),
      [500, 0.0001],
    );
    expect(fit.ok).toBe(true);
    if (!fit.ok) return;
    expect((fit.parameters[0] ?? NaN) / 238.94212918).toBeCloseTo(1, 9);
    expect((fit.parameters[1] ?? NaN) / 5.5015643181e-4).toBeCloseTo(1, 9);
    expect(fit.rss / 0.12455138894).toBeCloseTo(1, 9);
    const sd = Math.sqrt((fit.rss / 12) * (fit.unscaledCovariance[0]?.[0] ?? NaN));
    expect(sd / 2.7070075241).toBeCloseTo(1, 7);
  });

  it('comes back to what made the data', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 200, noNaN: true }),
        fc.double({ min: 0.002, max: 0.02, noNaN: true }),
        (a, b) => {
          const made = [20, 60, 120, 200, 400].map((x) => [a * (1 - Math.exp(-b * x)), x] as const);
          const fit = leastSquares(growth(made), [100, 0.01]);
          expect(fit.ok).toBe(true);
          if (!fit.ok) return;
          expect((fit.parameters[0] ?? NaN) / a).toBeCloseTo(1, 6);
          expect((fit.parameters[1] ?? NaN) / b).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  it('ends at the best place between bounds: there no free parameter has a slope, and no other lies lower', () => {
    const data = [20, 60, 120, 200, 400].map((x) => [80 * (1 - Math.exp(-0.01 * x)), x] as const);
    const bound = fc.double({ min: 60, max: 78, noNaN: true });
    fc.assert(
      fc.property(bound, fc.double({ min: 0.001, max: 0.05, noNaN: true }), (most, b) => {
        const bounds = { least: [1, 0.0005], most: [most, 0.1] };
        const fit = leastSquares(growth(data), [10, 0.003], bounds);
        expect(fit.ok).toBe(true);
        if (!fit.ok) return;
        // What made the data lies beyond the bound: so the fit rests on it.
        expect(fit.parameters[0]).toBe(most);
        expect(fit.unscaledCovariance[0]).toEqual([0, 0]);
        const there = growth(data)([most, b]).values;
        expect(fit.rss).toBeLessThanOrEqual(there.reduce((sum, r) => sum + r * r, 0) + 1e-9);
      }),
    );
  });

  it('says when parameters cannot be told apart', () => {
    const sum = ([a = NaN, b = NaN]: readonly number[]): Residuals => ({
      values: [a + b - 1, 2 * (a + b) - 2.1],
      slopes: [
        [1, 1],
        [2, 2],
      ],
    });
    expect(leastSquares(sum, [0, 0])).toMatchObject({ ok: false });
  });
});
