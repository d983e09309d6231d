import type { LogDensity, Mode } from '../../num/newtonMode.ts';
import type { Target } from './likelihood.ts';
import { scaleAt, scaleSlopeAt } from './priorScales.ts';

/**
 * Coordinates y in place of z in which the effects of batches are settled: each is counted from what its readings let expect
 * of it at this scale of batch scatter, in standard deviations of what they leave open. In z the effects enter divided by
 * their scale, so that those that many readings tell run along hyperbolas with it, and the mode stands far from where the
 * posterior lies; divided by nothing they are a funnel. Where the readings say a normal of each effect, y does not depend on
 * the scale at all. Papaspiliopoulos, Roberts & Sköld (2007), Stat. Sci. 22:59 (partly centred), with the share reckoned anew
 * at every scale.
 */
export interface SettledBatches {
  /** Writes z for y; gives ln |dz/dy|. */
  readonly toZ: (y: Float64Array, into: Float64Array) => number;
  readonly toY: (z: Float64Array) => Float64Array;
  /** ln of a target's density in y, with its slopes. */
  readonly climbIn: (target: Pick<Target, 'logDensity'>) => LogDensity;
}

/** What the readings of a batch say of its effect. */
interface OfBatch {
  /** Where it stands in z. */
  readonly at: number;
  /** In 1/(ln speed)². */
  readonly information: number;
  /** Information times the effect that they tell, and how it moves with the other coordinates. */
  readonly pull: number;
  readonly slopes: Float64Array;
}

/** A scale below this share of its prior's is reckoned with as if it were that. */
const leastScale = 1e-4;

/** By the posterior's shape about a mode in z; y is z where the model has no effects of batches. */
export const settledBatches = (
  { layout, priors }: Pick<Target, 'layout' | 'priors'>,
  { point, curvature }: Pick<Mode, 'point' | 'curvature'>,
): SettledBatches => {
  const { size, batch: first, batchSd } = layout;
  const prior = first < 0 ? null : priors.batchSd;
  const least = leastScale * (prior?.scale ?? 0);
  const scaleOf = (z: Float64Array): number =>
    prior === null ? 0 : Math.max(least, scaleAt(prior, z[batchSd] ?? NaN));
  const about = scaleOf(point);
  const others = Array.from({ length: first }, (_, d) => d).filter((d) => d !== batchSd);
  const batches = Array.from({ length: prior === null ? 0 : size - first }, (_, k): OfBatch => {
    const at = first + k;
    const own = Math.max(1, curvature[at * size + at] ?? NaN);
    return {
      at,
      information: (own - 1) / about ** 2,
      pull: (own * (point[at] ?? NaN)) / about,
      slopes: Float64Array.from(
        { length: first },
        (__, d) => (curvature[at * size + d] ?? NaN) / about,
      ),
    };
  });

  const pullAt = ({ pull, slopes }: OfBatch, z: Float64Array): number => {
    let sum = pull;
    for (const d of others) sum -= (slopes[d] ?? NaN) * ((z[d] ?? NaN) - (point[d] ?? NaN));
    return sum;
  };

  const toZ: SettledBatches['toZ'] = (y, into) => {
    into.set(y);
    const scale = scaleOf(y);
    let ln = 0;
    for (const one of batches) {
      const precision = 1 + scale * scale * one.information;
      const expected = (scale * pullAt(one, y)) / precision;
      into[one.at] = expected + (y[one.at] ?? NaN) / Math.sqrt(precision);
      ln -= 0.5 * Math.log(precision);
    }
    return ln;
  };

  const toY: SettledBatches['toY'] = (z) => {
    const y = Float64Array.from(z);
    const scale = scaleOf(z);
    for (const one of batches) {
      const precision = 1 + scale * scale * one.information;
      const expected = (scale * pullAt(one, z)) / precision;
      y[one.at] = ((z[one.at] ?? NaN) - expected) * Math.sqrt(precision);
    }
    return y;
  };

  const climbIn: SettledBatches['climbIn'] = ({ logDensity }) => {
    const z = new Float64Array(size);
    const ofZ = new Float64Array(size);
    return (y, gradient) => {
      const ln = toZ(y, z);
      const value = logDensity(z, ofZ);
      gradient.set(ofZ);
      if (prior === null) return value;
      const scale = scaleOf(y);
      let ofScale = 0;
      for (const one of batches) {
        const { at, information, slopes } = one;
        const square = scale * scale * information;
        const precision = 1 + square;
        const slope = ofZ[at] ?? NaN;
        gradient[at] = slope / Math.sqrt(precision);
        for (const d of others)
          gradient[d] = (gradient[d] ?? NaN) - (slope * scale * (slopes[d] ?? NaN)) / precision;
        const ofExpected = (pullAt(one, y) * (1 - square)) / precision ** 2;
        const ofWidth = ((y[at] ?? NaN) * scale * information) / precision ** 1.5;
        ofScale += slope * (ofExpected - ofWidth) - (scale * information) / precision;
      }
      if (scale > least)
        gradient[batchSd] =
          (gradient[batchSd] ?? NaN) + scaleSlopeAt(prior, y[batchSd] ?? NaN) * ofScale;
      return ln + value;
    };
  };

  return { toZ, toY, climbIn };
};
