import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalAtMode } from './adaptiveSampling.ts';
import { newtonMode, type LogDensity } from './newtonMode.ts';
import { straightAlong } from './straightAlong.ts';

/** A thin banana: the axis is N(0, 1); beside it y₁ ~ N(axis², 0.05·e^axis), y₂ ~ N(axis − y₁, 0.3). */
const banana: LogDensity = ([a = NaN, y1 = NaN, y2 = NaN], gradient) => {
  const width = 0.05 * Math.exp(a);
  const off = (y1 - a * a) / width;
  const beside = (y2 - a + y1) / 0.3;
  gradient[0] = -a + (off * 2 * a) / width + off * off - 1 + beside / 0.3;
  gradient[1] = -off / width - beside / 0.3;
  gradient[2] = -beside / 0.3;
  return -0.5 * (a * a + off * off + beside * beside) - a;
};

const mode = newtonMode(banana, Float64Array.of(0.1, 0.1, 0.1));
const straight = straightAlong(banana, mode, {
  axis: 0,
  spacing: { least: 0.1, most: 0.8 },
  leastCurvature: 0,
});
const y = new Float64Array(3);
const logAt = (x: Float64Array): number => {
  const ln = straight.toBent(x, y);
  return ln + banana(y, new Float64Array(3));
};
const off = fc.double({ min: -2, max: 2, noNaN: true });

describe('coordinates straight along an axis', () => {
  it('make a banana a normal as far as the nodes reach', () => {
    const middle = logAt(Float64Array.of(0, 0, 0));
    // The mode stands at -1, since the banana widens; the nodes a step of 0.8 apart.
    fc.assert(
      fc.property(fc.double({ min: -3.4, max: 1.4, noNaN: true }), off, off, (a, b, c) => {
        const normal = -0.5 * (a * a + b * b + c * c);
        expect(Math.abs(logAt(Float64Array.of(a, b, c)) - middle - normal)).toBeLessThan(0.8);
      }),
    );
  });

  it('keep the axis, and say how much room a step takes', () => {
    fc.assert(
      fc.property(off, off, off, (a, b, c) => {
        const x = Float64Array.of(a, b, c);
        const ln = straight.toBent(x, y);
        expect(y[0]).toBeCloseTo(a, 12);
        const columns = [1, 2].map((d) => {
          const there = new Float64Array(3);
          const moved = Float64Array.from(x);
          moved[d] = (moved[d] ?? NaN) + 1e-4;
          straight.toBent(moved, there);
          return there.map((value, i) => (value - (y[i] ?? NaN)) / 1e-4);
        });
        const [one = y, two = y] = columns;
        const area = (one[1] ?? NaN) * (two[2] ?? NaN) - (one[2] ?? NaN) * (two[1] ?? NaN);
        expect(Math.log(Math.abs(area))).toBeCloseTo(ln, 5);
      }),
    );
  });

  it('have the normal about the mode standing upright, one wide', () => {
    const { mean, factor } = straight.normalAbout(normalAtMode(mode.point, mode.factor));
    expect(Math.hypot(mean[1] ?? NaN, mean[2] ?? NaN)).toBeLessThan(0.05);
    expect(factor[4]).toBeCloseTo(1, 1);
    expect(factor[8]).toBeCloseTo(1, 1);
    for (const side of [3, 6, 7]) expect(Math.abs(factor[side] ?? NaN)).toBeLessThan(0.15);
  });
});
