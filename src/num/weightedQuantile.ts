import { risingOrder } from './systematicResample.ts';

/**
 * The weighted p-quantile of `values`: the point at which the weight of the values below it reaches `p` of the whole,
 * linear between neighbouring values (each value's weight is centred on it).
 * O(n log n) once per call through a sorted index; for many quantiles of one set call {@link weightedQuantiles}.
 */
export const weightedQuantile = (values: Float64Array, weights: Float64Array, p: number): number =>
  weightedQuantiles(values, weights, [p])[0] ?? Number.NaN;

/** As {@link weightedQuantile}, for several p in one pass over the sorted values. */
export const weightedQuantiles = (
  values: Float64Array,
  weights: Float64Array,
  ps: readonly number[],
): number[] => {
  const order = risingOrder(values);
  let total = 0;
  for (const weight of weights) total += weight;
  return ps.map((p) => {
    const target = p * total;
    let below = 0;
    let lastMiddle = 0;
    let lastValue = values[order[0] ?? NaN] ?? Number.NaN;
    for (const i of order) {
      const weight = weights[i] ?? NaN;
      if (weight === 0) continue;
      const value = values[i] ?? NaN;
      const middle = below + weight / 2;
      if (middle >= target) {
        if (middle === lastMiddle || lastMiddle === 0) return value;
        return lastValue + ((value - lastValue) * (target - lastMiddle)) / (middle - lastMiddle);
      }
      below += weight;
      lastMiddle = middle;
      lastValue = value;
    }
    return lastValue;
  });
};

const bins = 512;
const histogram = new Float64Array(bins);

/**
 * The p-quantile by a histogram of histograms, without sorting: within `(max − min)/512²` of the point where the weight
 * below reaches `p`. O(n), no allocation: for the inner loop of a search.
 */
export const roughWeightedQuantile = (
  values: Float64Array,
  weights: Float64Array,
  p: number,
): number => {
  let low = Infinity;
  let high = -Infinity;
  let total = 0;
  for (let i = 0; i < values.length; i += 1) {
    const weight = weights[i] ?? NaN;
    if (weight <= 0) continue;
    const value = values[i] ?? NaN;
    total += weight;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const target = p * total;
  let below = 0;
  for (let level = 0; level < 2; level += 1) {
    const perUnit = bins / (high - low);
    if (!Number.isFinite(perUnit)) return low;
    histogram.fill(0);
    for (let i = 0; i < values.length; i += 1) {
      const value = values[i] ?? NaN;
      if (!(value >= low && value <= high)) continue;
      const bin = Math.min(bins - 1, Math.floor((value - low) * perUnit));
      histogram[bin] = (histogram[bin] ?? NaN) + (weights[i] ?? NaN);
    }
    let bin = 0;
    while (bin < bins - 1 && below + (histogram[bin] ?? NaN) < target) {
      below += histogram[bin] ?? NaN;
      bin += 1;
    }
    low += bin / perUnit;
    high = low + 1 / perUnit;
  }
  return 0.5 * (low + high);
};
