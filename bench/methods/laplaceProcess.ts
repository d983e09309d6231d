import { cholesky, solveLower, choleskySolve } from '../../src/num/cholesky.ts';
import { inverseMills, logNormalCdf } from '../../src/num/normal.ts';

export type Kernel = (a: number, b: number) => number;

/** A Gaussian process seen through a probit, by Laplace's approximation about the mode. */
export interface LaplaceProcess {
  readonly mode: Float64Array;
  /** Laplace's approximation to ln of the evidence. */
  readonly logEvidence: number;
  readonly at: (x: number) => { readonly mean: number; readonly sd: number };
}

/**
 * P(yes | f) = Φ(f), f a process with this trend and kernel; labels are +1 and −1. Rasmussen & Williams (2006), Gaussian
 * Processes for Machine Learning, algorithms 3.1 and 3.2. O(n³) a step. Null where B is no longer positive definite.
 */
export const laplaceProcess = (
  xs: readonly number[],
  labels: readonly number[],
  kernel: Kernel,
  trend: (x: number) => number = () => 0,
): LaplaceProcess | null => {
  const n = xs.length;
  const k = Float64Array.from({ length: n * n }, (_, i) =>
    kernel(xs[Math.floor(i / n)] ?? 0, xs[i % n] ?? 0),
  );
  const base = Float64Array.from(xs, trend);
  let mode: Float64Array = base;
  let weights: Float64Array = new Float64Array(n);
  let slopes: Float64Array = new Float64Array(n);
  let factor: Float64Array | null = null;
  let height = -Infinity;
  let logEvidence = -Infinity;
  for (let step = 0; step < 60; step += 1) {
    slopes = mode.map((f, i) => (labels[i] ?? 1) * inverseMills((labels[i] ?? 1) * f));
    weights = mode.map((f, i) => (slopes[i] ?? 0) * ((slopes[i] ?? 0) + f));
    const roots = weights.map((w) => Math.sqrt(Math.max(0, w)));
    factor = cholesky(
      k.map(
        (value, i) =>
          (Math.floor(i / n) === i % n ? 1 : 0) +
          (roots[Math.floor(i / n)] ?? 0) * value * (roots[i % n] ?? 0),
      ),
      n,
    );
    if (factor === null) return null;
    const b = mode.map((f, i) => (weights[i] ?? 0) * (f - (base[i] ?? 0)) + (slopes[i] ?? 0));
    const kb = timesVector(k, b);
    const inner = choleskySolve(
      factor,
      n,
      kb.map((value, i) => (roots[i] ?? 0) * value),
    );
    const a = b.map((value, i) => value - (roots[i] ?? 0) * (inner[i] ?? 0));
    const away = timesVector(k, a);
    const next = away.map((value, i) => value + (base[i] ?? 0));
    const nextHeight =
      -0.5 * a.reduce((sum, value, i) => sum + value * (away[i] ?? 0), 0) +
      next.reduce((sum, f, i) => sum + logNormalCdf((labels[i] ?? 1) * f), 0);
    mode = next;
    const logRoot = roots.reduce((sum, _, i) => sum + Math.log(factor?.[i * n + i] ?? 1), 0);
    logEvidence = nextHeight - logRoot;
    if (Math.abs(nextHeight - height) < 1e-10) break;
    height = nextHeight;
  }
  const settled = factor;
  if (settled === null) return null;
  return {
    mode,
    logEvidence,
    at: (x) => {
      const toX = Float64Array.from(xs, (one) => kernel(one, x));
      const v = solveLower(
        settled,
        n,
        toX.map((value, i) => Math.sqrt(Math.max(0, weights[i] ?? 0)) * value),
      );
      const mean = toX.reduce((sum, value, i) => sum + value * (slopes[i] ?? 0), trend(x));
      const variance = kernel(x, x) - v.reduce((sum, value) => sum + value * value, 0);
      return { mean, sd: Math.sqrt(Math.max(0, variance)) };
    },
  };
};

const timesVector = (matrix: Float64Array, vector: Float64Array): Float64Array => {
  const n = vector.length;
  return vector.map((_, i) => {
    let sum = 0;
    for (let j = 0; j < n; j += 1) sum += (matrix[i * n + j] ?? 0) * (vector[j] ?? 0);
    return sum;
  });
};
