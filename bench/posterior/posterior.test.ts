import { describe, expect, it } from 'vitest';
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
const small = cases.filter(({ name }) =>
  ['binary-6-one-power', 'binary-24-grid4x6', 'binary-10-separated'].includes(name),
);
const nodes = 61;

describe('quadrature over the small model', () => {
  it.each(small)(
    '$name: has the mean, spread and evidence of the reference',
    ({ given, expected }) => {
      const found = quadrature(smallModel(given), nodes);
      for (const key of ['a', 'b', 'sigma', 'v97'] as const) {
        const { mean, sd } = expected[key];
        expect(Math.abs(found.of[key].mean - mean), `${key} mean`).toBeLessThan(0.01 * sd);
        expect(Math.abs(found.of[key].sd / sd - 1), `${key} sd`).toBeLessThan(0.01);
      }
      expect(found.logEvidence).toBeCloseTo(expected.logEvidence, 2);
    },
  );
});

describe('the posterior of the tool', () => {
  it.each(small)('$name: is the quadrature’s within 2 % of its spread', ({ given }) => {
    const dense = quadrature(smallModel(given), nodes);
    const found = referencePosterior(given, 10_000);
    for (const key of ['a', 'b', 'sigma', 'v97'] as const) {
      const { mean, sd } = dense.of[key];
      expect(Math.abs(found[key].mean - mean), `${key} mean`).toBeLessThan(0.02 * sd);
      expect(Math.abs(found[key].sd - sd), `${key} sd`).toBeLessThan(0.02 * sd);
    }
    expect(Math.abs(found.v97.q05 - dense.quantile('v97', 0.05))).toBeLessThan(
      0.02 * dense.of.v97.sd,
    );
  });
});

/*
 * Cards of which one or two grades have two readings, so that ln v50 and the answer have two hills. Values from a chain of
 * differential evolution (ter Braak & Vrugt 2008, Stat. Comput. 18:435) with 40 walkers and 1.2 million steps, written
 * apart from the tool's sampler; its halves agree within 0.04 sd.
 */
describe.each([
  { seed: 107, withTally: true, lnV50: [2.5369, 0.0517], lnFastest: [2.2168, 0.1211], q05: 1.9998 },
  { seed: 119, withTally: true, lnV50: [3.2286, 0.1759], lnFastest: [3.0024, 0.1975], q05: 2.751 },
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
    const one = small[1];
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
