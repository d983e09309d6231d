/**
 * Lower Cholesky factor of a symmetric matrix, row-major n×n, or null where it is not positive definite.
 * O(n³/3). Golub & Van Loan, Matrix Computations, §4.2. Kept here because the inner loops want typed arrays in place.
 */
export const cholesky = (matrix: Float64Array, n: number): Float64Array | null => {
  const lower = new Float64Array(n * n);
  return choleskyInto(matrix, n, lower) ? lower : null;
};

/** The same into `lower`, of which only the lower triangle is written; false where the matrix is not positive definite. */
export const choleskyInto = (matrix: Float64Array, n: number, lower: Float64Array): boolean => {
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = matrix[i * n + j] ?? NaN;
      for (let k = 0; k < j; k += 1) sum -= (lower[i * n + k] ?? NaN) * (lower[j * n + k] ?? NaN);
      if (i === j) {
        if (!(sum > 0)) return false;
        lower[i * n + i] = Math.sqrt(sum);
      } else {
        lower[i * n + j] = sum / (lower[j * n + j] ?? NaN);
      }
    }
  }
  return true;
};

/** Solves L·Lᵀ·x = b for a lower factor from {@link cholesky}. */
export const choleskySolve = (lower: Float64Array, n: number, b: Float64Array): Float64Array =>
  solveTransposed(lower, n, solveLower(lower, n, b));

/** Solves L·x = b. */
export const solveLower = (lower: Float64Array, n: number, b: Float64Array): Float64Array => {
  const x = Float64Array.from(b);
  for (let i = 0; i < n; i += 1) {
    let sum = x[i] ?? NaN;
    for (let k = 0; k < i; k += 1) sum -= (lower[i * n + k] ?? NaN) * (x[k] ?? NaN);
    x[i] = sum / (lower[i * n + i] ?? NaN);
  }
  return x;
};

/** Solves Lᵀ·x = b. */
export const solveTransposed = (lower: Float64Array, n: number, b: Float64Array): Float64Array => {
  const x = Float64Array.from(b);
  for (let i = n - 1; i >= 0; i -= 1) {
    let sum = x[i] ?? NaN;
    for (let k = i + 1; k < n; k += 1) sum -= (lower[k * n + i] ?? NaN) * (x[k] ?? NaN);
    x[i] = sum / (lower[i * n + i] ?? NaN);
  }
  return x;
};
