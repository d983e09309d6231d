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
    let lastValue = values[order[0] ?? 0] ?? Number.NaN;
    for (const i of order) {
      const weight = weights[i] ?? 0;
      if (weight === 0) continue;
      const value = values[i] ?? 0;
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

/**
 * The p-quantile by bisection, without sorting: within `(max − min)/2^steps` of the point where the weight below
 * reaches `p`. O(n·steps), no allocation: for the inner loop of a search.
 */
export const roughWeightedQuantile = (
  values: Float64Array,
  weights: Float64Array,
  p: number,
  steps = 17,
): number => {
  let low = Infinity;
  let high = -Infinity;
  let total = 0;
  for (let i = 0; i < values.length; i += 1) {
    const weight = weights[i] ?? 0;
    if (weight <= 0) continue;
    const value = values[i] ?? 0;
    total += weight;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const target = p * total;
  for (let step = 0; step < steps; step += 1) {
    const middle = 0.5 * (low + high);
    let below = 0;
    for (let i = 0; i < values.length; i += 1) {
      if ((values[i] ?? 0) <= middle) below += weights[i] ?? 0;
    }
    if (below < target) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
};
