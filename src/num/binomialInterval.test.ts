import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  clopperPearson,
  clopperPearsonLower,
  jeffreys,
  jeffreysWithEnds,
  wilson,
} from './binomialInterval.ts';
import { logChoose } from './logChoose.ts';

const counts = fc
  .tuple(fc.integer({ min: 1, max: 300 }), fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([n, part]) => ({ n, x: Math.round(n * part) }));

/** P(from … to of n succeed), summed as the definition says. */
const chance = (n: number, share: number, from: number, to: number): number => {
  let sum = 0;
  for (let k = from; k <= to; k += 1) {
    const ways = logChoose(n, k);
    sum += Math.exp(ways + k * Math.log(share) + (n - k) * Math.log1p(-share));
  }
  return sum;
};

describe('intervals for a share', () => {
  it('know the rule of three: none failed of n', () => {
    // From (1 − p)ⁿ = 0.05.
    expect(clopperPearsonLower({ x: 59, n: 59 }, 0.95)).toBeCloseTo(0.05 ** (1 / 59), 12);
  });

  it('of Clopper and Pearson end where the count would be as rare as was said', () => {
    fc.assert(
      fc.property(counts, (count) => {
        const [low, high] = clopperPearson(count, 0.9);
        const { x, n } = count;
        if (x > 0) expect(chance(n, low, x, n)).toBeCloseTo(0.05, 10);
        else expect(low).toBe(0);
        if (x < n) expect(chance(n, high, 0, x)).toBeCloseTo(0.05, 10);
        else expect(high).toBe(1);
      }),
    );
  });

  it('hold the share, mirror, widen with the confidence, and lie in the exact one', () => {
    fc.assert(
      fc.property(counts, (count) => {
        const mirrored = { n: count.n, x: count.n - count.x };
        for (const kind of [clopperPearson, wilson, jeffreysWithEnds]) {
          const [low, high] = kind(count, 0.95);
          expect(low).toBeLessThanOrEqual(count.x / count.n);
          expect(high).toBeGreaterThanOrEqual(count.x / count.n);
          expect(kind(mirrored, 0.95)[0]).toBeCloseTo(1 - high, 10);
          expect(kind(count, 0.99)[0]).toBeLessThanOrEqual(low);
        }
        const [exactLow, exactHigh] = clopperPearson(count, 0.95);
        const [low, high] = jeffreys(count, 0.95);
        expect(low).toBeGreaterThanOrEqual(exactLow);
        expect(high).toBeLessThanOrEqual(exactHigh);
      }),
    );
  });
});
