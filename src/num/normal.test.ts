import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { inverseMills, logNormalCdf, normalCdf, normalPdf, normalQuantile } from './normal.ts';

const closeTo = (got: number, want: number, relative = 1e-13): void => {
  expect(Math.abs(got - want)).toBeLessThanOrEqual(relative * Math.abs(want));
};

// Values: mpmath 1.3.0 at 60 digits.
describe('the standard normal', () => {
  it('keeps its digits far below zero', () => {
    closeTo(normalCdf(-20), 2.7536241186062337e-89);
    closeTo(logNormalCdf(-38.5), -745.695270290411);
    closeTo(logNormalCdf(8), -6.220960574271786e-16);
    closeTo(normalPdf(5), 1.4867195147342977e-6);
  });

  it('inverts in the middle and in both tails', () => {
    closeTo(normalQuantile(0.75), 0.6744897501960817);
    closeTo(normalQuantile(1e-10), -6.361340902404057);
    closeTo(normalQuantile(1e-100), -21.273453560965326);
    closeTo(normalQuantile(0.9999), 3.7190164854557084);
  });

  it('says infinity at the ends and nothing outside', () => {
    expect(normalQuantile(0)).toBe(-Infinity);
    expect(normalQuantile(1)).toBe(Infinity);
    expect(normalQuantile(1.1)).toBeNaN();
  });

  it('joins the two routes to the quantile without a step', () => {
    for (const p of [0.02, 0.98]) {
      const slope = 1 / normalPdf(normalQuantile(p));
      const rise = normalQuantile(p + 1e-9) - normalQuantile(p - 1e-9);
      expect(Math.abs(rise - 2e-9 * slope)).toBeLessThan(1e-14);
    }
  });

  it('has the inverse Mills ratio as the slope of its logarithm', () => {
    closeTo(inverseMills(-5), 5.186503967125842);
    closeTo(inverseMills(3), 0.004437839042125664);
    fc.assert(
      fc.property(fc.double({ min: -30, max: 5, noNaN: true }), (x) => {
        const slope = (logNormalCdf(x + 1e-5) - logNormalCdf(x - 1e-5)) / 2e-5;
        expect(Math.abs(slope - inverseMills(x))).toBeLessThan(1e-6 * (1 + Math.abs(x)));
      }),
    );
  });

  it('comes back from the quantile to the probability', () => {
    fc.assert(
      fc.property(fc.double({ min: -700, max: -1e-3, noNaN: true }), (lnP) => {
        closeTo(logNormalCdf(normalQuantile(Math.exp(lnP))), lnP, 1e-11);
      }),
    );
  });
});
