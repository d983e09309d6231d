import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { tCdf } from './distributions.ts';
import { noncentralTCdf, noncentralTQuantile, toleranceFactor } from './noncentralT.ts';
import { normalCdf } from './normal.ts';

describe('the noncentral t', () => {
  it('is Student’s own without a shift', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 500, noNaN: true }),
        (x, degrees) => {
          expect(Math.abs(noncentralTCdf(x, degrees, 0) - tCdf(x, degrees))).toBeLessThan(1e-11);
        },
      ),
    );
  });

  it('at 0 is the normal tail beyond the shift, whatever the degrees', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 30, noNaN: true }),
        fc.double({ min: 1, max: 2000, noNaN: true }),
        (shift, degrees) => {
          const [got, want] = [noncentralTCdf(0, degrees, shift), normalCdf(-shift)];
          expect(Math.abs(got - want)).toBeLessThanOrEqual(1e-11 * want);
        },
      ),
    );
  });

  it('gives the published tolerance factors', () => {
    // One-sided 95/95 for n = 5, 10, 50: 4.203, 2.911, 2.065 (ISO 16269-6, also Natrella 1963; printed to 3 decimals).
    const wish = { coverage: 0.95, confidence: 0.95 };
    expect(toleranceFactor(5, wish)).toBeCloseTo(4.203, 3);
    expect(toleranceFactor(10, wish)).toBeCloseTo(2.911, 3);
    expect(toleranceFactor(50, wish)).toBeCloseTo(2.065, 3);
  });

  it('inverts, for small and large samples alike', () => {
    for (const degrees of [1, 4, 49, 2999]) {
      for (const p of [0.001, 0.05, 0.5, 0.95, 0.999]) {
        const shift = 1.645 * Math.sqrt(degrees + 1);
        const x = noncentralTQuantile(p, degrees, shift) ?? NaN;
        expect(Math.abs(noncentralTCdf(x, degrees, shift) - p)).toBeLessThan(1e-12);
      }
    }
  });

  it('nears the quantile itself as the sample grows', () => {
    const k = toleranceFactor(100_000, { coverage: 0.97, confidence: 0.95 }) ?? NaN;
    expect(k).toBeGreaterThan(1.8807936081512506);
    expect(k).toBeLessThan(1.8807936081512506 + 0.02);
  });
});
