import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { pairedTest } from './pairedTest.ts';

const count = fc.integer({ min: 0, max: 60 });

describe('pairedTest', () => {
  it('is the sign test: 1 against 5', () => {
    // (1 + 6)/2⁶ on one side.
    const test = pairedTest(1, 5);
    expect(test?.oneSided).toBeCloseTo(7 / 64, 14);
    expect(test?.twoSided).toBeCloseTo(14 / 64, 14);
    expect(test?.midP).toBeCloseTo(8 / 64, 14);
    expect(test?.chiSquare).toBeCloseTo(16 / 6, 14);
  });

  it('does not care which way is which, and the sides add up', () => {
    fc.assert(
      fc.property(count, count, (b, c) => {
        fc.pre(b + c > 0);
        const [one, other] = [pairedTest(b, c), pairedTest(c, b)];
        expect(one?.twoSided).toBeCloseTo(other?.twoSided ?? NaN, 12);
        const seen =
          (one?.twoSided === 1 && b === c ? 1 : (one?.twoSided ?? NaN)) - (one?.midP ?? NaN);
        expect((one?.oneSided ?? NaN) + (other?.oneSided ?? NaN) - seen).toBeCloseTo(1, 10);
      }),
    );
  });

  it('says nothing where all pairs agree', () => {
    expect(pairedTest(0, 0)).toBeNull();
  });
});
