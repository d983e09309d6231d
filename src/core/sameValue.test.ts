import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameValue } from './sameValue.ts';

describe('whether two values say the same', () => {
  it('minds what is said, not the order of the keys', () => {
    expect(sameValue({ a: 1, b: [1, { c: null }] }, { b: [1, { c: null }], a: 1 })).toBe(true);
    expect(sameValue({ a: 1 }, { a: 1, b: 2 })).toBe(false);
    expect(sameValue([1, 2], [2, 1])).toBe(false);
    expect(sameValue([], {})).toBe(false);
    expect(sameValue(null, {})).toBe(false);
    expect(sameValue({ a: undefined }, { b: 1 })).toBe(false);
    expect(sameValue({ toString: 1 }, { a: 1 })).toBe(false);
  });

  it('agrees with itself after a walk through JSON', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        // JSON has no minus zero.
        const plain: unknown = JSON.parse(JSON.stringify(value));
        expect(sameValue(plain, JSON.parse(JSON.stringify(plain)))).toBe(true);
      }),
    );
  });

  it('is the same both ways', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (one, other) => {
        expect(sameValue(one, other)).toBe(sameValue(other, one));
      }),
    );
  });
});
