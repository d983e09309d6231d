import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { labFromSrgb8, linearFromSrgb8, srgbAsPrinted, srgbExact, type Triple } from './colour.ts';
import { colourDifference } from './colourDifference.ts';

const byte = fc.integer({ min: 0, max: 255 });
const lab = fc.tuple(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
);

describe('colours', () => {
  it('derive the printed matrix from the primaries, to its four digits', () => {
    for (const [i, row] of srgbExact.toXyz.entries()) {
      for (const [j, value] of row.entries()) {
        expect(value).toBeCloseTo(srgbAsPrinted.toXyz[i]?.[j] ?? NaN, 3);
      }
    }
    // Lindbloom's table of the sRGB matrix for D65: 0.4124564, 0.7151522, 0.9503041 (from memory; its white differs a little).
    expect(srgbExact.toXyz[0][0]).toBeCloseTo(0.41246, 3);
    expect(srgbExact.toXyz[1][1]).toBeCloseTo(0.71515, 3);
  });

  it('know white, black and the greys between', () => {
    fc.assert(
      fc.property(byte, (grey) => {
        const [l, a, b] = labFromSrgb8([grey, grey, grey]);
        expect(Math.hypot(a, b)).toBeLessThan(1e-9);
        expect(l).toBeGreaterThanOrEqual(0);
        expect(l).toBeLessThanOrEqual(100 + 1e-9);
      }),
    );
    expect(labFromSrgb8([255, 255, 255])[0]).toBeCloseTo(100, 10);
    expect(labFromSrgb8([0, 0, 0])).toEqual([0, 0, 0]);
    // IEC 61966-2-1: the two pieces meet at 0.04045, that is at 10.3 of 255.
    expect(linearFromSrgb8(10.31475)).toBeCloseTo(0.0031308, 6);
  });
});

describe('the difference of two colours', () => {
  it('is that of the published pairs, the awkward hues among them', () => {
    // Sharma, Wu & Dalal 2005, table 1: pairs 1, 7, 14, 17, 25.
    const pairs: readonly (readonly [Triple, Triple, number])[] = [
      [[50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
      [[50, 0, 0], [50, -1, 2], 2.3669],
      [[50, -0.001, 2.49], [50, 0.0012, -2.49], 4.7461],
      [[50, 2.5, 0], [73, 25, -18], 27.1492],
      [[60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
    ];
    for (const [one, other, printed] of pairs) {
      expect(colourDifference(one, other)).toBeCloseTo(printed, 4);
    }
  });

  it('is none between equal colours, and the same both ways', () => {
    fc.assert(
      fc.property(lab, lab, (one, other) => {
        expect(colourDifference(one, one)).toBe(0);
        expect(colourDifference(one, other)).toBeCloseTo(colourDifference(other, one), 9);
        expect(colourDifference(one, other)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});
