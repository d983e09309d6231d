import type { Interval } from './binomialInterval.ts';

export interface IndividualsChart {
  readonly mean: number;
  /** Mean of the distances between neighbours. */
  readonly meanMovingRange: number;
  /** mean ± 3 sigma, sigma being the mean moving range over d₂. */
  readonly limits: Interval;
  readonly movingRangeUpperLimit: number;
}

/** The tables’ factors for ranges of two: the mean range in sigmas, and its upper limit in mean ranges. */
const [d2, upperFactor] = [1.128, 3.267];

/** Single observations and their moving ranges (NIST/SEMATECH e-Handbook 6.3.2.2). Null for fewer than two. */
export const individualsChart = (x: readonly number[]): IndividualsChart | null => {
  if (x.length < 2) return null;
  const mean = x.reduce((sum, value) => sum + value, 0) / x.length;
  const meanMovingRange =
    x.slice(1).reduce((sum, value, i) => sum + Math.abs(value - (x[i] ?? NaN)), 0) / (x.length - 1);
  const reach = (3 * meanMovingRange) / d2;
  return {
    mean,
    meanMovingRange,
    limits: [mean - reach, mean + reach],
    movingRangeUpperLimit: upperFactor * meanMovingRange,
  };
};
