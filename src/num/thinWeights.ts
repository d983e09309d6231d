import { risingOrder } from './systematicResample.ts';

/** Which of many weighted points are kept, and the weight of each; weights sum to what they did. */
export interface Thinned {
  readonly chosen: Uint32Array;
  readonly weight: Float64Array;
}

/**
 * About `count` of the weighted points in place of all: those that weigh c or more stay as they are, and of the lighter ones a
 * share goes on at weight c, taken evenly in rising order of `by`. No unbiased choice of so many points moves weights less:
 * Fearnhead & Clifford (2003), J. R. Stat. Soc. B 65:887. O(n log n).
 */
export const thinWeights = (weights: Float64Array, by: Float64Array, count: number): Thinned => {
  const least = leastKept(weights, count);
  const chosen: number[] = [];
  const weight: number[] = [];
  let reached = 0.5 * least;
  for (const i of risingOrder(by)) {
    const own = weights[i] ?? NaN;
    if (own >= least && own > 0) {
      chosen.push(i);
      weight.push(own);
      continue;
    }
    reached += own;
    if (reached >= least && own > 0) {
      reached -= least;
      chosen.push(i);
      weight.push(least);
    }
  }
  return { chosen: Uint32Array.from(chosen), weight: Float64Array.from(weight) };
};

/** The c at which Σ min(1, w/c) is `count`; 0 where there are no more points than that. */
const leastKept = (weights: Float64Array, count: number): number => {
  const falling = Float64Array.from(weights).sort().reverse();
  if (falling.length <= count) return 0;
  let lighter = falling.reduce((sum, weight) => sum + weight, 0);
  for (let kept = 0; kept < count; kept += 1) {
    const least = lighter / (count - kept);
    const next = falling[kept] ?? NaN;
    if (next < least) return least;
    lighter -= next;
  }
  return falling[count] ?? NaN;
};
