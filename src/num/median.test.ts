import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { median } from './median.ts';

describe('the median', () => {
  it('is the middle value, or half-way between two', () => {
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 3, 2])).toBe(2.5);
    expect(median([])).toBeUndefined();
  });

  it('has as many values below as above, whatever their order', () => {
    fc.assert(
      fc.property(fc.array(fc.integer(), { minLength: 1 }), (values) => {
        const middle = median(values) ?? NaN;
        const below = values.filter((value) => value < middle).length;
        expect(below).toBeLessThanOrEqual(values.length / 2);
        expect(values.filter((value) => value > middle).length).toBeLessThanOrEqual(
          values.length / 2,
        );
        expect(median([...values].reverse())).toBe(middle);
      }),
    );
  });
});
