import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastWhole } from './leastWhole.ts';

describe('the least whole number that is enough', () => {
  it('is found wherever it lies', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 500 }), (a, b) => {
        const [least, high] = a < b ? [a, b] : [b, a];
        expect(leastWhole(high, (value) => value >= least)).toBe(least);
      }),
    );
  });

  it('is the upper end, whole or not, where nothing below is enough', () => {
    expect(leastWhole(34.5, () => false)).toBe(34.5);
    expect(leastWhole(34.5, (value) => value >= 34)).toBe(34);
  });
});
