import type { ReferenceCase } from '../../src/core/cutmodel/referencePosterior.ts';
import { logNormalCdf } from '../../src/num/normal.ts';

/**
 * The small model of the reference cases written out a second time, straight from their statement: ln of prior times
 * likelihood at z, each parameter its prior's mean + sd·z (a, b, ln σ and, where it is unknown, ln δ). With the constants
 * of the prior, so that its integral is the evidence.
 */
export interface SmallModel {
  readonly dimensions: number;
  readonly logDensity: (z: Float64Array) => number;
  /** a, b, σ, δ and the speed that keeps the asked share. */
  readonly read: (z: Float64Array) => SmallPoint;
}

export interface SmallPoint {
  readonly a: number;
  readonly b: number;
  readonly sigma: number;
  readonly delta: number;
  readonly v97: number;
}

/** Φ⁻¹(0.97), as the cases state it. */
const z97 = 1.8807936081512511;

export const smallModel = (given: ReferenceCase): SmallModel => {
  const { prior, observations, P0, query } = given;
  const dimensions = prior.lnDelta === undefined ? 3 : 4;
  const read = (z: Float64Array): SmallPoint => {
    const a = prior.a.mean + prior.a.sd * (z[0] ?? 0);
    const b = prior.b.mean + prior.b.sd * (z[1] ?? 0);
    const sigma = Math.exp(prior.lnSigma.mean + prior.lnSigma.sd * (z[2] ?? 0));
    const delta =
      prior.lnDelta === undefined
        ? (given.deltaFixed ?? 0)
        : Math.exp(prior.lnDelta.mean + prior.lnDelta.sd * (z[3] ?? 0));
    const v97 = Math.exp(a + b * Math.log(query.P / P0) - z97 * sigma);
    return { a, b, sigma, delta, v97 };
  };
  const rows = observations.map(({ P, v, grade }) => ({
    lnPower: Math.log(P / P0),
    lnSpeed: Math.log(v),
    grade,
  }));
  return {
    dimensions,
    read,
    logDensity: (z) => {
      const { a, b, sigma, delta } = read(z);
      let sum = -0.5 * dimensions * Math.log(2 * Math.PI);
      for (const value of z) sum -= 0.5 * value * value;
      for (const { lnPower, lnSpeed, grade } of rows) {
        const x = (a + b * lnPower - lnSpeed) / sigma;
        const y = x + delta / sigma;
        if (grade === 'out') sum += logNormalCdf(x);
        else if (grade === 'in') sum += logNormalCdf(-x);
        else if (grade === 'not') sum += logNormalCdf(-y);
        else sum += logDifference(x, y);
      }
      return sum;
    },
  };
};

/** ln(Φ(y) − Φ(x)) for x < y, on the side of the mean where it loses no digits. */
const logDifference = (x: number, y: number): number => {
  const [low, high] = x > 0 ? [-y, -x] : [x, y];
  const top = logNormalCdf(high);
  return top + Math.log(Math.max(1e-300, -Math.expm1(logNormalCdf(low) - top)));
};
