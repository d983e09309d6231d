/**
 * A density on evenly spaced points, the first at `from` steps of a grid through 0. Weights sum to 1. What the sums of
 * independent effects are made of.
 */
export interface GridDensity {
  readonly from: number;
  readonly weights: Float64Array;
}

/** Density of the sum of two independent variables on the same grid. O(n·m). */
export const sumOf = (one: GridDensity, other: GridDensity): GridDensity => {
  const weights = new Float64Array(one.weights.length + other.weights.length - 1);
  const [a, b] = [one.weights, other.weights];
  for (let i = 0; i < a.length; i += 1) {
    const factor = a[i] ?? NaN;
    if (factor === 0) continue;
    for (let j = 0; j < b.length; j += 1) {
      weights[i + j] = (weights[i + j] ?? NaN) + factor * (b[j] ?? NaN);
    }
  }
  return { from: one.from + other.from, weights };
};

/** Density of `by` times the variable on the same grid; `by` a whole number, not 0. */
export const times = ({ from, weights }: GridDensity, by: number): GridDensity => {
  const stretch = Math.abs(by);
  const stretched = new Float64Array((weights.length - 1) * stretch + 1);
  weights.forEach((weight, i) => {
    stretched[by > 0 ? i * stretch : (weights.length - 1 - i) * stretch] = weight;
  });
  return { from: by > 0 ? from * by : (from + weights.length - 1) * by, weights: stretched };
};

/**
 * P(variable ≤ at), where each weight is spread evenly over its own step; `at` in steps. O(n).
 */
export const chanceBelow = ({ from, weights }: GridDensity, at: number): number => {
  let sum = 0;
  weights.forEach((weight, i) => {
    sum += weight * Math.min(1, Math.max(0, at - (from + i) + 0.5));
  });
  return sum;
};

/** The value in steps below which a share `p` of the density lies; p strictly between 0 and 1. O(n). */
export const quantileOf = ({ from, weights }: GridDensity, p: number): number => {
  let below = 0;
  for (const [i, weight] of weights.entries()) {
    if (below + weight >= p && weight > 0) return from + i - 0.5 + (p - below) / weight;
    below += weight;
  }
  return from + weights.length - 0.5;
};
