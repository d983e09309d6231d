import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import reference from '../../test/reference/t05_sensitivity.json' with { type: 'json' };
import { fitBinary } from '../../src/num/binaryRegression.ts';
import { doseAt } from '../../src/num/doseLimits.ts';
import { deltaLimit } from './langlie.ts';
import { dOptimalNext, fitLine, likelihoodRatioLimit } from './probitLine.ts';

/** Hamada, Mang & Hoff (2019), Table 1: a drop that sets off stands for a cell that does not come out. */
const published = reference.cases.find(({ name }) => name === 'hamada-2019-bruceton');
const heights = published?.input.height ?? [];
const trials = heights.map((height, i) => ({
  lnSpeed: Math.log10(height),
  out: published?.input.y?.[i] === 0,
}));

describe('a probit line of single cells', () => {
  it('has the published mean and spread', () => {
    const line = fitLine(trials);
    expect(line?.mean).toBeCloseTo(1.53169061614, 6);
    expect(line?.sd).toBeCloseTo(0.073731807841, 6);
  });

  it('has the delta limit of the regression with the same data', () => {
    const rows = trials.map(({ lnSpeed, out }) => ({
      x: [1, lnSpeed],
      trials: 1,
      successes: out ? 1 : 0,
    }));
    const fit = fitBinary(rows, 'probit');
    const expected = fit.ok ? doseAt(fit, 0.97, 0.9).deltaLimits[0] : NaN;
    expect(deltaLimit(trials)).toBeCloseTo(expected, 5);
  });

  it('has its ratio limit where twice the loss of likelihood is 1.645², fitted by another route', () => {
    const limit = likelihoodRatioLimit(trials) ?? NaN;
    // With the 97 % point held at the limit the only covariate left is the distance from it, and the offset is fixed:
    // scan the spread instead of fitting it.
    const best = heightAt(1.53169061614, 0.073731807841);
    let held = -Infinity;
    for (let sd = 0.02; sd < 0.6; sd *= 1.001) {
      held = Math.max(held, heightAt(limit + 1.8807936081512511 * sd, sd));
    }
    expect(2 * (best - held)).toBeCloseTo(1.6448536269514722 ** 2, 3);
  });

  it('moves its limit with the data', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), (shift) => {
        const moved = trials.map(({ lnSpeed, out }) => ({ lnSpeed: lnSpeed + shift, out }));
        expect((likelihoodRatioLimit(moved) ?? NaN) - shift).toBeCloseTo(
          likelihoodRatioLimit(trials) ?? NaN,
          5,
        );
      }),
      { numRuns: 5 },
    );
  });

  it('has no limit from one outcome alone', () => {
    expect(likelihoodRatioLimit([{ lnSpeed: 1, out: true }])).toBeNull();
    expect(
      fitLine([
        { lnSpeed: 1, out: true },
        { lnSpeed: 2, out: false },
      ]),
    ).toBeNull();
  });

  // The two-point D-optimal design of a probit lies at the 12.8 % and 87.2 % points, 1.138 sd either side.
  // Abdelbasit & Plackett (1983), JASA 78:90.
  it('puts the partner of a cell at +1.138 sd to −1.138 sd', () => {
    const next = dOptimalNext([{ lnSpeed: 1.138, out: false }], { mean: 0, sd: 1 });
    expect(Math.abs(next + 1.138)).toBeLessThan(0.03);
  });
});

/** Log likelihood with another Φ than the one under test. */
const heightAt = (mean: number, sd: number): number =>
  trials.reduce((sum, { lnSpeed, out }) => {
    const below = normalShare((mean - lnSpeed) / sd);
    return sum + Math.log(Math.max(1e-12, out ? below : 1 - below));
  }, 0);

/** Φ by Simpson's rule on the density. */
const normalShare = (x: number): number => {
  const steps = 400;
  const h = x / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i += 1) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * Math.exp(-0.5 * (i * h) ** 2);
  }
  return 0.5 + (sum * h) / 3 / Math.sqrt(2 * Math.PI);
};
