import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom } from './seededRandom.ts';
import { thinWeights } from './thinWeights.ts';

const total = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0);

describe('weighted points thinned', () => {
  it('leave heavy points as they are and give the lighter ones one weight', () => {
    // Fearnhead & Clifford (2003), eq. 5: c solves Σ min(1, w/c) = 3, so c = 0.15 of ½, ⅕ and six of 0.05.
    const weights = Float64Array.of(0.5, 0.2, 0.05, 0.05, 0.05, 0.05, 0.05, 0.05);
    const { chosen, weight } = thinWeights(
      weights,
      Float64Array.from(weights, (_, i) => i),
      4,
    );
    expect([...chosen].slice(0, 2)).toEqual([0, 1]);
    expect([...weight].slice(0, 2)).toEqual([0.5, 0.2]);
    expect([...weight].slice(2)).toHaveLength(2);
    for (const light of weight.slice(2)) expect(light).toBeCloseTo(0.15, 12);
  });

  it('are all of them where they are few', () => {
    const weights = Float64Array.of(0.7, 0.3);
    const { chosen, weight } = thinWeights(weights, weights, 5);
    expect([...chosen].sort()).toEqual([0, 1]);
    expect(total(weight)).toBeCloseTo(1, 12);
  });

  it('keep about so many, their sum within the lightest, and means to a part of their spread', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 50, max: 400 }),
        (seed, most) => {
          const random = seededRandom(seed);
          const raw = Float64Array.from({ length: 1000 }, () => random.uniform() ** 4);
          const weights = raw.map((value) => value / total(raw));
          const by = Float64Array.from({ length: 1000 }, () => random.normal());
          const { chosen, weight } = thinWeights(weights, by, most);
          const least = weight.reduce((a, b) => Math.min(a, b), Infinity);
          expect(Math.abs(chosen.length - most)).toBeLessThanOrEqual(1);
          expect(Math.abs(total(weight) - 1)).toBeLessThanOrEqual(least);
          const before = weights.reduce((sum, w, i) => sum + w * (by[i] ?? 0), 0);
          const after = weight.reduce((sum, w, i) => sum + w * (by[chosen[i] ?? 0] ?? 0), 0);
          expect(Math.abs(after - before)).toBeLessThan(12 * least);
        },
      ),
    );
  });
});
