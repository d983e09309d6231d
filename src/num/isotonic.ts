export interface IsotonicFit {
  /** The fitted value at each place. */
  readonly fit: readonly number[];
  /** Where each block of equal fitted values begins, and last of all the number of places. */
  readonly blockStarts: readonly number[];
  /** Weighted sum of squared misfits. */
  readonly sse: number;
}

interface Block {
  readonly start: number;
  readonly mean: number;
  readonly weight: number;
}

/**
 * Weighted least squares under the sole condition that the values never fall (or, `increasing: false`, never rise):
 * the pool-adjacent-violators rule. O(n). Source: Barlow, Bartholomew, Bremner & Brunk 1972, chapter 1 (from memory).
 *
 * @param weights positive, one for each value.
 */
export const isotonic = (
  values: readonly number[],
  weights: readonly number[],
  { increasing = true } = {},
): IsotonicFit => {
  if (weights.length !== values.length || weights.some((weight) => !(weight > 0))) {
    throw new RangeError('isotonic: one positive weight for each value');
  }
  const sign = increasing ? 1 : -1;
  const blocks: Block[] = [];
  for (const [start, value] of values.entries()) {
    let block: Block = { start, mean: value, weight: weights[start] ?? NaN };
    // Invariant: the means of the blocks on the stack rise strictly.
    for (let last = blocks.at(-1); last !== undefined; last = blocks.at(-1)) {
      if (sign * last.mean < sign * block.mean) break;
      block = pooled(last, block);
      blocks.pop();
    }
    blocks.push(block);
  }
  const blockStarts = [...blocks.map((block) => block.start), values.length];
  const fit = blocks.flatMap((block, k) =>
    Array.from({ length: (blockStarts[k + 1] ?? NaN) - block.start }, () => block.mean),
  );
  const sse = values.reduce(
    (sum, value, i) => sum + (weights[i] ?? NaN) * (value - (fit[i] ?? NaN)) ** 2,
    0,
  );
  return { fit, blockStarts, sse };
};

const pooled = (left: Block, right: Block): Block => {
  const weight = left.weight + right.weight;
  return {
    start: left.start,
    mean: left.mean + (right.weight / weight) * (right.mean - left.mean),
    weight,
  };
};
