import { cholesky, choleskySolve } from './cholesky.ts';

export type Matrix = readonly (readonly number[])[];

/**
 * The inverse of a symmetric positive definite matrix and the logarithm of its determinant; null where it is not
 * positive definite. Rows and columns are scaled to a unit diagonal first, so that units do not matter. O(n³).
 */
export const invertPositive = (
  matrix: Matrix,
): { readonly inverse: Matrix; readonly logDeterminant: number } | null => {
  const n = matrix.length;
  const scales = matrix.map((row, i) => Math.sqrt(row[i] ?? NaN));
  const scaled = Float64Array.from(
    matrix.flatMap((row, i) =>
      row.map((value, j) => value / ((scales[i] ?? NaN) * (scales[j] ?? NaN))),
    ),
  );
  if (!scaled.every(Number.isFinite)) return null;
  const lower = cholesky(scaled, n);
  // A pivot that is all rounding: the columns depend on each other.
  if (lower === null || scales.some((_, i) => (lower[i * n + i] ?? NaN) < 1e-7)) return null;
  const inverse = scales.map((scale, i) => {
    const unit = Float64Array.from(scales, (_, j) => (i === j ? 1 : 0));
    return Array.from(
      choleskySolve(lower, n, unit),
      (value, j) => value / (scale * (scales[j] ?? NaN)),
    );
  });
  const logDeterminant = scales.reduce(
    (sum, scale, i) => sum + 2 * Math.log(scale) + 2 * Math.log(lower[i * n + i] ?? NaN),
    0,
  );
  return { inverse, logDeterminant };
};

/** Matrix times vector. */
export const times = (matrix: Matrix, vector: readonly number[]): readonly number[] =>
  matrix.map((row) => dot(row, vector));

export const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * (b[i] ?? NaN), 0);

/** Σ weightᵢ · rowᵢ · rowᵢᵀ. */
export const weightedCross = (rows: Matrix, weights: readonly number[]): Matrix => {
  const n = rows[0]?.length ?? 0;
  const sum = Array.from({ length: n }, () => Array.from({ length: n }, () => 0));
  for (const [r, row] of rows.entries()) {
    for (const [i, a] of row.entries()) {
      const line = sum[i];
      if (line === undefined) continue;
      for (const [j, b] of row.entries()) line[j] = (line[j] ?? NaN) + (weights[r] ?? NaN) * a * b;
    }
  }
  return sum;
};

/** Σ weightᵢ · rowᵢ. */
export const weightedSum = (rows: Matrix, weights: readonly number[]): readonly number[] => {
  const sum = Array.from({ length: rows[0]?.length ?? 0 }, () => 0);
  for (const [r, row] of rows.entries()) {
    for (const [i, a] of row.entries()) sum[i] = (sum[i] ?? NaN) + (weights[r] ?? NaN) * a;
  }
  return sum;
};
