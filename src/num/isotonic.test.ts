import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { isotonic } from './isotonic.ts';

const readings = fc.array(
  fc.record({
    value: fc.double({ min: -10, max: 10, noNaN: true }),
    weight: fc.double({ min: 0.1, max: 5, noNaN: true }),
  }),
  { minLength: 1, maxLength: 12 },
);

describe('isotonic', () => {
  it('pools what falls, by weight', () => {
    // scipy 1.17.1 isotonic_regression.
    const { fit, blockStarts } = isotonic([1, 3, 2, 4, 3.5, 5], [1, 1, 2, 1, 3, 1]);
    const wanted = [1, 7 / 3, 7 / 3, 3.625, 3.625, 5];
    for (const [i, want] of wanted.entries()) expect(fit[i]).toBeCloseTo(want, 12);
    expect(blockStarts).toEqual([0, 1, 3, 5, 6]);
  });

  it('never falls, keeps the weighted mean, and meets the min-max formula', () => {
    fc.assert(
      fc.property(readings, (given) => {
        const values = given.map(({ value }) => value);
        const weights = given.map(({ weight }) => weight);
        const { fit } = isotonic(values, weights);
        const mean = (from: number, to: number): number => {
          const part = given.slice(from, to + 1);
          const weight = part.reduce((sum, one) => sum + one.weight, 0);
          return part.reduce((sum, one) => sum + one.weight * one.value, 0) / weight;
        };
        const places = values.map((_, i) => i);
        for (const [i, got] of fit.entries()) {
          // max over starts at or before i of min over ends at or after i: the fit by definition, in O(n³).
          const want = Math.max(
            ...places
              .slice(0, i + 1)
              .map((from) => Math.min(...places.slice(i).map((to) => mean(from, to)))),
          );
          expect(Math.abs(got - want)).toBeLessThan(1e-9);
        }
      }),
    );
  });

  it('falls where asked to: the mirror of rising', () => {
    fc.assert(
      fc.property(readings, (given) => {
        const values = given.map(({ value }) => value);
        const weights = given.map(({ weight }) => weight);
        const falling = isotonic(values, weights, { increasing: false }).fit;
        const mirrored = isotonic(
          values.map((value) => -value),
          weights,
        ).fit;
        for (const [i, value] of falling.entries())
          expect(value).toBeCloseTo(-(mirrored[i] ?? NaN), 12);
      }),
    );
  });

  it('refuses a weight that is not positive, as a bug', () => {
    expect(() => isotonic([1, 2], [1, 0])).toThrow(RangeError);
    expect(() => isotonic([1, 2], [1])).toThrow(RangeError);
  });
});
