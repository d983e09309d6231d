import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { areaUnder, lastXAtOrBelow, monotoneCubic, slopeAt, valueAt } from './monotoneCubic.ts';

const risingKnots = fc
  .array(
    fc.record({
      step: fc.double({ min: 0.1, max: 20, noNaN: true }),
      rise: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 9, noNaN: true })),
    }),
    { minLength: 2, maxLength: 9 },
  )
  .map((steps) => {
    let [x, y] = [0, 0];
    const knots = steps.map(({ step, rise }) => ({ x: (x += step), y: (y += rise) }));
    return monotoneCubic(
      knots.map((knot) => knot.x),
      knots.map((knot) => knot.y),
    );
  });

const along = (curve: { readonly x: readonly number[] }, part: number): number => {
  const [first = NaN, last = NaN] = [curve.x[0], curve.x.at(-1)];
  return Math.min(last, first + part * (last - first));
};

describe('monotoneCubic', () => {
  // scipy 1.17.1 PchipInterpolator on [8 10 13 16 20 25 32], [1 .98 .91 .62 .2 .03 0].
  const falling = monotoneCubic([8, 10, 13, 16, 20, 25, 32], [1, 0.98, 0.91, 0.62, 0.2, 0.03, 0]);

  it('has the slopes, heights and area of the published rule', () => {
    expect(falling.slopes[1]).toBeCloseTo(-0.0136363636364, 12);
    expect(falling.slopes[0]).toBeCloseTo(-0.00466666666667, 12);
    expect(falling.slopes[6]).toBe(0);
    expect(valueAt(falling, 8.470588)).toBeCloseTo(0.997069693229, 11);
    expect(slopeAt(falling, 8.470588)).toBeCloseTo(-0.00769319355269, 11);
    expect(areaUnder(falling)).toBeCloseTo(9.30898099468, 10);
  });

  it('gives the knots back to the last bit, the last knot too', () => {
    for (const [k, x] of falling.x.entries()) expect(valueAt(falling, x)).toBe(falling.y[k]);
  });

  it('is the straight line through two knots', () => {
    const line = monotoneCubic([10, 30], [2, 6]);
    expect(valueAt(line, 15)).toBeCloseTo(3, 14);
    expect(slopeAt(line, 29)).toBeCloseTo(0.2, 14);
  });

  it('never falls where its knots do not, and its inverse comes back', () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(risingKnots, part, part, (curve, one, other) => {
        const [left, right] = [
          along(curve, Math.min(one, other)),
          along(curve, Math.max(one, other)),
        ];
        const height = valueAt(curve, left);
        expect(valueAt(curve, right)).toBeGreaterThanOrEqual(height - 1e-12 * (1 + height));
        const back = lastXAtOrBelow(curve, height);
        expect(back).not.toBeNull();
        expect(valueAt(curve, back ?? NaN)).toBeLessThanOrEqual(height);
        expect(valueAt(curve, back ?? NaN)).toBeGreaterThan(height - 1e-9 * (1 + height));
      }),
    );
  });

  it('scales with its axes', () => {
    const inches = monotoneCubic(
      falling.x.map((x) => x / 25.4),
      falling.y,
    );
    expect(valueAt(inches, 17 / 25.4)).toBeCloseTo(valueAt(falling, 17), 12);
  });

  it('says nothing outside its knots', () => {
    expect(() => valueAt(falling, 7.99)).toThrow(RangeError);
    expect(() => valueAt(falling, 32.01)).toThrow(RangeError);
    expect(() => monotoneCubic([1, 1], [2, 3])).toThrow(RangeError);
    expect(() => monotoneCubic([1], [2])).toThrow(RangeError);
    const line = monotoneCubic([10, 30], [2, 6]);
    expect(lastXAtOrBelow(line, 1.9)).toBeNull();
    expect(lastXAtOrBelow(line, 6.1)).toBeNull();
    expect(lastXAtOrBelow(line, 6)).toBe(30);
  });
});
