import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roughWeightedQuantile, weightedQuantile } from './weightedQuantile.ts';

describe('weightedQuantile', () => {
  it('is the middle value of three equal weights', () => {
    expect(weightedQuantile(Float64Array.of(3, 1, 2), Float64Array.of(1, 1, 1), 0.5)).toBe(2);
  });

  it('treats a weight of two as the value standing there twice', () => {
    const twice = weightedQuantile(Float64Array.of(1, 1, 2, 3), Float64Array.of(1, 1, 1, 1), 0.7);
    const heavy = weightedQuantile(Float64Array.of(1, 2, 3), Float64Array.of(2, 1, 1), 0.7);
    expect(heavy).toBeCloseTo(twice, 12);
  });

  it('rises with p and stays within the values, rough and exact alike', () => {
    const value = fc.double({ min: -1e3, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(value, fc.double({ min: 0.01, max: 1, noNaN: true })), {
          minLength: 2,
          maxLength: 40,
        }),
        fc.double({ min: 0.02, max: 0.5, noNaN: true }),
        (pairs, p) => {
          const values = Float64Array.from(pairs, ([v]) => v);
          const weights = Float64Array.from(pairs, ([, w]) => w);
          const [low, high] = [Math.min(...values), Math.max(...values)];
          for (const quantile of [weightedQuantile, roughWeightedQuantile]) {
            const q = quantile(values, weights, p);
            expect(q).toBeGreaterThanOrEqual(low - 1e-9);
            expect(q).toBeLessThanOrEqual(high + 1e-9);
            expect(quantile(values, weights, p + 0.4)).toBeGreaterThanOrEqual(q - 1e-9);
          }
        },
      ),
    );
  });
});
