/** Where the values stand in rising order, as indices. O(n log n). */
export const risingOrder = (values: Float64Array): Uint32Array =>
  Uint32Array.from(values, (_, i) => i).sort((i, j) => (values[i] ?? NaN) - (values[j] ?? NaN));

/**
 * So many indices of equal weight in place of the weighted ones, in rising order of `by`, whose distribution is kept best.
 * `weights` sum to 1. Kitagawa (1996), J. Comput. Graph. Stat. 5:1. O(n log n).
 */
export const systematicResample = (
  weights: Float64Array,
  by: Float64Array,
  count: number,
): Uint32Array => {
  const order = risingOrder(by);
  const chosen = new Uint32Array(count);
  let reached = 0;
  let next = 0;
  for (const i of order) {
    reached += weights[i] ?? NaN;
    while (next < count && (next + 0.5) / count <= reached) {
      chosen[next] = i;
      next += 1;
    }
  }
  return chosen.fill(order.at(-1) ?? 0, next);
};
