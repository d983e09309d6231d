import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import reference from '../../test/reference/t06_bayes_posterior.json' with { type: 'json' };
import {
  referencePosterior,
  type ReferenceCase,
} from '../../src/core/cutmodel/referencePosterior.ts';
import { fit } from '../../src/core/cutmodel/fit.ts';
import { meanSdOf } from '../../src/core/cutmodel/posterior.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { weightedQuantile } from '../../src/num/weightedQuantile.ts';
import { drawStudy } from '../calibration/drawStudy.ts';
import { quadrature } from './quadrature.ts';
import { effectiveDraws, randomWalk } from './randomWalk.ts';
import { smallModel } from './smallModel.ts';

const cases = reference.cases.map(({ name, input, expected }) => ({
  name,
  given: input as unknown as ReferenceCase, // the border to the reference file
  expected,
}));
/** Nodes an axis: fewer where there are four. */
const nodesFor = (given: ReferenceCase): number => (given.prior.lnDelta === undefined ? 61 : 27);
const quantitiesOf = (given: ReferenceCase) =>
  [
    'a',
    'b',
    'sigma',
    'v97',
    ...(given.prior.lnDelta === undefined ? [] : (['delta'] as const)),
  ] as const;

const summary = z.object({ mean: z.number(), sd: z.number(), q05: z.number(), q95: z.number() });

describe.each(cases)('$name', ({ given, expected }) => {
  const dense = quadrature(smallModel(given), nodesFor(given));
  const outside = z
    .object({ a: summary, b: summary, sigma: summary, v97: summary, delta: summary.optional() })
    .parse(expected);

  it('by quadrature has the mean, spread, 5 % quantile of v97 and evidence of the reference', () => {
    for (const key of quantitiesOf(given)) {
      const { mean = NaN, sd = NaN } = outside[key] ?? {};
      expect(Math.abs(dense.of[key].mean - mean), `${key} mean`).toBeLessThan(0.01 * sd);
      expect(Math.abs(dense.of[key].sd / sd - 1), `${key} sd`).toBeLessThan(0.01);
    }
    // With four axes the steps are too wide for a quantile.
    if (given.prior.lnDelta === undefined) {
      const { q05, sd } = outside.v97;
      expect(Math.abs(dense.quantile('v97', 0.05) - q05)).toBeLessThan(0.02 * sd);
    }
    expect(dense.logEvidence).toBeCloseTo(expected.logEvidence, 2);
  });

  it('by the tool is the quadrature’s within 2 % of its spread, quantiles the reference’s', () => {
    const found = referencePosterior(given, 10_000);
    for (const key of quantitiesOf(given)) {
      const { mean, sd } = dense.of[key];
      const ours = found[key];
      if (ours === undefined) throw new Error(`nothing is said of ${key}`);
      expect(Math.abs(ours.mean - mean), `${key} mean`).toBeLessThan(0.02 * sd);
      expect(Math.abs(ours.sd - sd), `${key} sd`).toBeLessThan(0.02 * sd);
      // A grid's own quantile is no finer than its steps; the reference's is.
      const { q05 = NaN, q95 = NaN } = outside[key] ?? {};
      expect(Math.abs(ours.q05 - q05), `${key} 5 %`).toBeLessThan(0.02 * sd);
      expect(Math.abs(ours.q95 - q95), `${key} 95 %`).toBeLessThan(0.02 * sd);
    }
    expect(found.logEvidence).toBeCloseTo(dense.logEvidence, 2);
  });
});

/*
 * Cards of which one or two grades have two readings, so that ln v50 and the answer have two hills. Values from a chain of
 * differential evolution (ter Braak & Vrugt 2008, Stat. Comput. 18:435) with 40 walkers and 1.2 million steps (2.4
 * million where there is an order), written apart from the tool's sampler; its halves agree within 0.04 sd.
 */
describe.each([
  { seed: 107, withTally: true, lnV50: [2.4425, 0.0715], lnFastest: [2.2008, 0.1141], q05: 1.9991 },
  { seed: 119, withTally: true, lnV50: [3.2346, 0.1787], lnFastest: [3.0157, 0.1965], q05: 2.7715 },
  {
    seed: 134,
    withTally: false,
    lnV50: [3.1149, 0.1428],
    lnFastest: [2.7695, 0.2408],
    q05: 2.3827,
  },
] as const)(
  'an everyday fit of drawn study $seed',
  ({ seed, withTally, lnV50, lnFastest, q05 }) => {
    it('finds both hills', () => {
      const { study } = drawStudy(seededRandom(seed), withTally);
      const { posterior, decision } = fit(study);
      const fastest = decision.lnFastestAtP0;
      const held = [
        [meanSdOf(posterior, (i) => posterior.lnV50[i] ?? 0), lnV50],
        [meanSdOf(posterior, (i) => fastest[i] ?? 0), lnFastest],
      ] as const;
      for (const [found, [mean, sd]] of held) {
        expect(Math.abs(found.mean - mean)).toBeLessThan(0.1 * sd);
        expect(Math.abs(found.sd / sd - 1)).toBeLessThan(0.1);
      }
      const low = weightedQuantile(fastest, posterior.weight, 0.05);
      expect(Math.abs(low - q05)).toBeLessThan(0.15 * lnFastest[1]);
    });
  },
);

describe('a random walk', () => {
  it('finds a reference posterior within its own error', () => {
    const one = cases.find(({ name }) => name === 'binary-24-grid4x6');
    if (one === undefined) throw new Error('no case');
    const model = smallModel(one.given);
    const walk = randomWalk(model.logDensity, model.dimensions, seededRandom(5), {
      warmUp: 4000,
      keep: 30_000,
    });
    const a = Float64Array.from(walk.steps, (z) => model.read(z).a);
    const mean = a.reduce((sum, value) => sum + value, 0) / a.length;
    const error = one.expected.a.sd / Math.sqrt(effectiveDraws(a));
    expect(error).toBeLessThan(0.05 * one.expected.a.sd);
    expect(Math.abs(mean - one.expected.a.mean)).toBeLessThan(4 * error);
    expect(walk.acceptedShare).toBeGreaterThan(0.1);
    expect(walk.acceptedShare).toBeLessThan(0.5);
  });

  it('visits each value of a side variable as often as it weighs', () => {
    const walk = randomWalk(
      (z, side) => -0.5 * (z[0] ?? 0) ** 2 + (side === 1 ? Math.log(3) : 0),
      1,
      seededRandom(2),
      { warmUp: 2000, keep: 40_000, sides: 2 },
    );
    expect(walk.sides.reduce((a, b) => a + b, 0) / walk.sides.length).toBeCloseTo(0.75, 1);
  });

  // A first-order autoregression with coefficient φ is worth n·(1 − φ)/(1 + φ) draws.
  it('counts what an autoregression is worth', () => {
    const random = seededRandom(7);
    const values = new Float64Array(60_000);
    for (let i = 1; i < values.length; i += 1) {
      values[i] = 0.8 * (values[i - 1] ?? 0) + random.normal();
    }
    expect(effectiveDraws(values) / values.length / (0.2 / 1.8)).toBeGreaterThan(0.85);
    expect(effectiveDraws(values) / values.length / (0.2 / 1.8)).toBeLessThan(1.15);
  });
});
