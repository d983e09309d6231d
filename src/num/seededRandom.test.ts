import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { seededRandom } from './seededRandom.ts';

describe('the seeded generator', () => {
  it('is the Mersenne twister MT19937', () => {
    // numpy 2.4.6, MT19937 seeded 5489 as the reference code does by default: first raw output 3499211612.
    expect(seededRandom(5489).integer(2 ** 31)).toBe(3499211612 % 2 ** 31);
  });

  it('says the same again for the same seed and something else for another', () => {
    const draw = (seed: number): number[] => {
      const random = seededRandom(seed);
      return [random.uniform(), random.normal(), random.integer(1000), random.uniform()];
    };
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
  });

  it('has the mean and spread of the normal', () => {
    const random = seededRandom(1);
    const values = Array.from({ length: 20_000 }, () => random.normal());
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    // Four standard errors.
    expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(values.length));
    expect(Math.abs(variance - 1)).toBeLessThan(4 * Math.sqrt(2 / values.length));
  });

  it('shuffles without losing or adding, and reaches every order equally', () => {
    fc.assert(
      fc.property(fc.array(fc.integer()), fc.integer(), (items, seed) => {
        const shuffled = seededRandom(seed).shuffle(items);
        const ascending = (a: number, b: number): number => a - b;
        expect(shuffled.toSorted(ascending)).toEqual(items.toSorted(ascending));
      }),
    );
    const random = seededRandom(3);
    const counts = new Map<string, number>();
    for (let round = 0; round < 6000; round += 1) {
      const order = random.shuffle(['a', 'b', 'c']).join('');
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect(counts.size).toBe(6);
    // Chi-square with 5 degrees of freedom: 20.5 is passed one time in a thousand.
    const chiSquare = [...counts.values()].reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0);
    expect(chiSquare).toBeLessThan(20.5);
  });
});
