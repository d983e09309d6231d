import { paretoSmoothed } from '../../num/paretoSmoothing.ts';
import type { Posterior } from '../cutmodel/posterior.ts';

/** A posterior carried to other data by the weights of its own points. */
export interface Reweighed {
  readonly posterior: Posterior;
  /** Shape of the tail of the weights. */
  readonly paretoShape: number;
  /** False where the points lie too badly for the other data: then it takes a fit of its own. */
  readonly isReliable: boolean;
}

/** Fewer effective points than this are too few for a quantile near the edge. */
const leastEffectivePoints = 700;
/**
 * Weights of a heavier tail have no variance (k > 1/2): means over them settle slowly. Stricter than the 0.7
 * of the source, since a quantile near the edge is asked of them, and a fit costs little.
 */
const mostShape = 0.5;

/** Multiplies the weights by a factor, given as its log for each point, and smooths their tail. */
export const reweighed = (posterior: Posterior, logFactor: Float64Array): Reweighed => {
  const logWeights = Float64Array.from(
    posterior.weight,
    (weight, i) => Math.log(Math.max(weight, 1e-300)) + (logFactor[i] ?? NaN),
  );
  const { weight, shape, effectivePoints } = paretoSmoothed(logWeights);
  return {
    posterior: { ...posterior, weight, effectivePoints },
    paretoShape: shape,
    isReliable: shape <= mostShape && effectivePoints >= leastEffectivePoints,
  };
};

/** The posterior as it is, with the tail of its weights smoothed. */
export const smoothedWhole = (posterior: Posterior): Reweighed =>
  reweighed(posterior, new Float64Array(posterior.count));
