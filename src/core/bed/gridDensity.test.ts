import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceBelow, quantileOf, sumOf, times, type GridDensity } from './gridDensity.ts';

const die: GridDensity = { from: 1, weights: Float64Array.from({ length: 6 }, () => 1 / 6) };

const mean = ({ from, weights }: GridDensity): number =>
  weights.reduce((sum, weight, i) => sum + weight * (from + i), 0);

describe('a density on a grid', () => {
  it('adds two dice: seven in 6 of 36', () => {
    const two = sumOf(die, die);
    expect(two.from).toBe(2);
    expect(two.weights[5]).toBeCloseTo(6 / 36, 14);
    expect(chanceBelow(two, 7.5)).toBeCloseTo(21 / 36, 14);
    expect(quantileOf(two, 0.5)).toBeCloseTo(7, 12);
  });

  it('stretches and turns round', () => {
    const turned = times(die, -2);
    expect(turned.from).toBe(-12);
    expect([...turned.weights].filter((weight) => weight > 0)).toHaveLength(6);
    expect(mean(turned)).toBeCloseTo(-7, 12);
  });

  it('finds at a quantile what lies below it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 12 }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (parts, p) => {
          const total = parts.reduce((sum, part) => sum + part, 0);
          const density = { from: -3, weights: Float64Array.from(parts, (part) => part / total) };
          expect(chanceBelow(density, quantileOf(density, p))).toBeCloseTo(p, 10);
        },
      ),
    );
  });
});
