import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  betaCdf,
  betaQuantile,
  chiSquareCdf,
  chiSquareQuantile,
  chiSquareUpperTail,
  fCdf,
  fQuantile,
  logGamma,
  tCdf,
  tQuantile,
} from './distributions.ts';

const closeTo = (got: number, want: number, relative = 1e-12): void => {
  expect(Math.abs(got - want)).toBeLessThanOrEqual(relative * Math.abs(want));
};
const probability = fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true });
const shape = fc.double({ min: 0.5, max: 200, noNaN: true });

describe('the distributions', () => {
  // mpmath 1.3.0 at 50 digits.
  it('gives Student’s quantile with any number of degrees: the normal’s in the limit', () => {
    // t(0.975, 1000) as in the reference values; beyond 1e8 the limit 1.959963984540054.
    expect(tQuantile(0.975, 1000)).toBeCloseTo(1.962339080826408, 12);
    expect(tQuantile(0.975, 0.99e8)).toBeCloseTo(tQuantile(0.975, 1.01e8), 8);
    for (const degrees of [1e12, 1e17, 1e20, Infinity]) {
      expect(tQuantile(0.975, degrees)).toBeCloseTo(1.959963984540054, 10);
    }
  });

  it('keep their digits in the far tails', () => {
    closeTo(tCdf(-50, 3), 8.808576020635988e-6);
    closeTo(betaCdf(1e-5, 2, 5), 1.4999600004499979e-9);
    closeTo(chiSquareUpperTail(100, 1), 1.523970604832105e-23);
    closeTo(chiSquareUpperTail(50, 3), 7.989179244951472e-11);
    closeTo(fCdf(1e-6, 40, 60), 8.503592942426694e-111);
    closeTo(fCdf(1e-6, 5, 5), 5.432469322503187e-15);
    closeTo(logGamma(100.5), 361.4355404677776);
  });

  it('invert', () => {
    fc.assert(
      fc.property(probability, shape, shape, (p, a, b) => {
        const x = betaQuantile(p, a, b);
        // Nearer to 1 a double cannot say where it stands.
        if (x < 1 - 1e-6) closeTo(betaCdf(x, a, b), p, 1e-9);
        closeTo(tCdf(tQuantile(p, a), a), p, 1e-9);
        closeTo(chiSquareCdf(chiSquareQuantile(p, a), a), p, 1e-9);
        closeTo(fCdf(fQuantile(p, a, b), a, b), p, 1e-9);
      }),
    );
  });

  it('have tails that add up to one, on both sides of the change of route', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 300, noNaN: true }), shape, (x, degrees) => {
        closeTo(chiSquareUpperTail(x, degrees) + chiSquareCdf(x, degrees), 1);
      }),
    );
    expect(chiSquareUpperTail(0, 3)).toBe(1);
    expect(chiSquareUpperTail(Infinity, 3)).toBe(0);
  });

  it('know their kinships', () => {
    // The square of t is F with one and the same degrees; chi-square with 2 degrees is exponential.
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 30, noNaN: true }), shape, (x, degrees) => {
        closeTo(fCdf(x * x, 1, degrees), 1 - 2 * tCdf(-x, degrees), 1e-10);
        closeTo(chiSquareUpperTail(x, 2), Math.exp(-x / 2));
      }),
    );
  });
});
