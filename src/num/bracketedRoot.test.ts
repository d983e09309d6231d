import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { bracketedRoot } from './bracketedRoot.ts';

describe('bracketedRoot', () => {
  it('finds a root between differing signs, in few evaluations', () => {
    const found = bracketedRoot((x) => Math.cos(x) - x, { low: 0, high: 1 });
    // The fixed point of the cosine, OEIS A003957.
    expect(found?.x).toBeCloseTo(0.7390851332151607, 15);
    expect(found?.evaluations).toBeLessThan(20);
    expect(found?.halfWidth).toBeLessThan(1e-8);
  });

  it('finds it for steep, flat and backward brackets', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.constantFrom(1, 3, 9),
        fc.boolean(),
        (root, power, backward) => {
          const f = (x: number): number => Math.sign(x - root) * Math.abs(x - root) ** power;
          const bracket = backward ? { low: 101, high: -100 } : { low: -100, high: 101 };
          const x = bracketedRoot(f, bracket)?.x ?? NaN;
          expect(Math.abs(f(x))).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('stays sure where the function spans hundreds of orders of magnitude', () => {
    const found = bracketedRoot((x) => Math.exp(x) - 1e-200, { low: -700, high: 700 });
    expect(found?.x).toBeCloseTo(-200 * Math.LN10, 9);
  });

  it('says null where the signs agree', () => {
    expect(bracketedRoot((x) => x * x + 1, { low: -1, high: 1 })).toBeNull();
    expect(bracketedRoot(() => NaN, { low: -1, high: 1 })).toBeNull();
  });

  it('takes an end that is the root itself', () => {
    expect(bracketedRoot((x) => x, { low: 0, high: 1 })?.x).toBe(0);
    expect(bracketedRoot((x) => x, { low: -1, high: 0 })?.x).toBe(0);
  });
});
