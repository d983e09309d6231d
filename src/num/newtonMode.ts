import { choleskyInto, choleskySolve, solveLower } from './cholesky.ts';

/** A function to be maximised: writes its gradient at `point` into `gradient` and returns its value. */
export type LogDensity = (point: Float64Array, gradient: Float64Array) => number;

export interface Mode {
  readonly point: Float64Array;
  readonly value: number;
  /** Minus the matrix of second derivatives, row-major, made positive definite where it was not. */
  readonly curvature: Float64Array;
  /** Lower Cholesky factor of `curvature`. */
  readonly factor: Float64Array;
  readonly iterations: number;
  readonly converged: boolean;
}

const differenceStep = 1e-4;

/**
 * Goes to a local maximum by Newton's method with Levenberg's damping; second derivatives by forward differences of
 * the gradient. Where the function cannot be reckoned it does not go. O(n) gradients and one n³/3 factorisation a step. Coordinates named in `held` do not move.
 * Nocedal & Wright, Numerical Optimization, ch. 3 and 6.
 */
export const newtonMode = (
  logDensity: LogDensity,
  start: Float64Array,
  options: {
    readonly held?: readonly number[];
    readonly mostIterations?: number;
    /** Twice the rise that a quadratic would still promise, below which the search ends. */
    readonly enough?: number;
  } = {},
): Mode => {
  const n = start.length;
  const { held = [], mostIterations = 40, enough = 1e-6 } = options;
  let point = Float64Array.from(start);
  let gradient = new Float64Array(n);
  let value = logDensity(point, gradient);
  let curvature = minusHessian(logDensity, point, gradient, held);
  let factor = positiveFactor(curvature, n);
  let converged = false;
  let iterations = 0;
  while (iterations < mostIterations) {
    iterations += 1;
    for (const i of held) gradient[i] = 0;
    const step = choleskySolve(factor, n, gradient);
    let slope = 0;
    for (let i = 0; i < n; i += 1) slope += (step[i] ?? NaN) * (gradient[i] ?? NaN);
    if (slope < enough) {
      converged = true;
      break;
    }
    let length = 1;
    let moved = false;
    for (let halving = 0; halving < 20 && !moved; halving += 1, length /= 2) {
      const trial = Float64Array.from(point, (x, i) => x + length * (step[i] ?? NaN));
      const trialGradient = new Float64Array(n);
      const trialValue = logDensity(trial, trialGradient);
      if (trialValue >= value + 1e-4 * length * slope && trialGradient.every(Number.isFinite)) {
        point = trial;
        value = trialValue;
        gradient = trialGradient;
        moved = true;
      }
    }
    if (!moved) {
      converged = slope < 1e-5;
      break;
    }
    curvature = minusHessian(logDensity, point, gradient, held);
    factor = positiveFactor(curvature, n);
  }
  return { point, value, curvature, factor, iterations, converged };
};

/** The standard deviation of one coordinate in the normal about a mode. */
export const spreadAt = (
  { factor, point }: Pick<Mode, 'factor' | 'point'>,
  axis: number,
): number => {
  const unit = new Float64Array(point.length);
  unit[axis] = 1;
  // Its variance is the squared length of L⁻¹e.
  return Math.hypot(...solveLower(factor, point.length, unit));
};

/** Minus the second derivatives by forward differences of the gradient; rows of held coordinates are those of the unit matrix. */
export const minusHessian = (
  logDensity: LogDensity,
  point: Float64Array,
  gradient: Float64Array,
  held: readonly number[],
): Float64Array => {
  const n = point.length;
  const matrix = new Float64Array(n * n);
  const nudged = Float64Array.from(point);
  const there = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    if (held.includes(i)) continue;
    nudged[i] = (point[i] ?? NaN) + differenceStep;
    logDensity(nudged, there);
    nudged[i] = point[i] ?? NaN;
    for (let j = 0; j < n; j += 1) {
      const bend = -((there[j] ?? NaN) - (gradient[j] ?? NaN)) / differenceStep;
      // At the edge of where the function can be reckoned nothing is known of its bend.
      matrix[i * n + j] = Number.isFinite(bend) ? bend : 0;
    }
  }
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < i; j += 1) {
      const both =
        held.includes(i) || held.includes(j)
          ? 0
          : 0.5 * ((matrix[i * n + j] ?? NaN) + (matrix[j * n + i] ?? NaN));
      matrix[i * n + j] = both;
      matrix[j * n + i] = both;
    }
  }
  for (const i of held) matrix[i * n + i] = 1;
  return matrix;
};

/**
 * Lower Cholesky factor of the matrix, with as much added to its diagonal (in doubling steps) as keeps every squared pivot
 * at `leastPivot` or more: a bound on how wide a normal with this curvature gets. Changes the matrix; writes the factor `into` what is given.
 */
export const positiveFactor = (
  matrix: Float64Array,
  n: number,
  leastPivot = 0,
  into = new Float64Array(n * n),
): Float64Array => {
  // Once it dominates its rows a finite matrix is positive definite, so this ends.
  const dominant = n * matrix.reduce((most, entry) => Math.max(most, Math.abs(entry)), leastPivot);
  if (!Number.isFinite(dominant)) throw new Error('a matrix that is not finite has no factor');
  for (let more = 1e-3; ; more = Math.max(2 * more, 1e-12 * dominant)) {
    if (choleskyInto(matrix, n, into) && smallestPivot(into, n) >= leastPivot) return into;
    for (let i = 0; i < n; i += 1) matrix[i * n + i] = (matrix[i * n + i] ?? NaN) + more;
  }
};

const smallestPivot = (factor: Float64Array, n: number): number => {
  let least = Infinity;
  for (let i = 0; i < n; i += 1) least = Math.min(least, (factor[i * n + i] ?? NaN) ** 2);
  return least;
};
