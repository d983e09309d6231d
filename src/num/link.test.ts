import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { links } from './link.ts';

const names = ['logit', 'probit', 'cloglog'] as const;
const step = 1e-5;

describe.each(names)('the %s link', (name) => {
  const link = links[name];
  // The complementary log-log is as good as 1 above 3.
  const etas = fc.double({ min: -12, max: name === 'cloglog' ? 3 : 12, noNaN: true });

  it('comes back from the probability to the predictor', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 0.999999, noNaN: true }), (p) => {
        expect(Math.abs(link.probability(link.predictor(p)) - p)).toBeLessThan(1e-12 * p + 1e-15);
      }),
    );
  });

  it('has logarithms that add up to one', () => {
    fc.assert(
      fc.property(etas, (eta) => {
        const sum = Math.exp(link.logProbability(eta)) + Math.exp(link.logComplement(eta));
        expect(Math.abs(sum - 1)).toBeLessThan(1e-13);
        expect(Math.exp(link.logProbability(eta))).toBeCloseTo(link.probability(eta), 13);
      }),
    );
  });

  it('has the slopes that it says it has', () => {
    const slope = (f: (eta: number) => number, eta: number): number =>
      (f(eta + step) - f(eta - step)) / (2 * step);
    const lnWeight = (eta: number): number => Math.log(link.gain(eta)) + Math.log(link.loss(eta));
    const lnSlope = (eta: number): number => Math.log(link.gain(eta)) + link.logProbability(eta);
    const near = (got: number, want: number): void => {
      expect(Math.abs(got - want)).toBeLessThan(1e-5 * (1 + Math.abs(want)));
    };
    fc.assert(
      fc.property(etas, (eta) => {
        near(slope(link.logProbability, eta), link.gain(eta));
        near(-slope(link.logComplement, eta), link.loss(eta));
        near(slope(lnWeight, eta), link.weightTilt(eta));
        near(slope(lnSlope, eta), link.slopeTilt(eta));
      }),
    );
  });
});

describe('the far tails of the links', () => {
  it('keep their digits', () => {
    expect(links.logit.logComplement(800)).toBe(-800);
    expect(links.cloglog.logProbability(-700)).toBeCloseTo(-700, 10);
    expect(links.cloglog.gain(-700)).toBe(1);
    // mpmath 1.3.0: ln Φ(−38.5).
    expect(links.probit.logProbability(-38.5)).toBeCloseTo(-745.695270290411, 10);
  });
});
