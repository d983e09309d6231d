import { dot, invertPositive, times, weightedCross, type Matrix } from './symmetricMatrix.ts';

export interface LeastSquaresFit {
  readonly parameters: readonly number[];
  /** Sum of the squared residuals. */
  readonly rss: number;
  /**
   * Inverse of JᵀJ at the fit; times rss/(n − parameters) it is the usual covariance. Rows and columns of parameters that
   * rest on a bound are 0: the others’ covariance is as if those were given.
   */
  readonly unscaledCovariance: Matrix;
  readonly iterations: number;
}

export type LeastSquaresOutcome =
  | ({ readonly ok: true } & LeastSquaresFit)
  | { readonly ok: false; readonly reason: 'not-converged' | 'dependent-parameters' };

/** Residuals at some parameters and their slopes: one row of slopes a residual. */
export interface Residuals {
  readonly values: readonly number[];
  readonly slopes: Matrix;
}

/** Least and most of each parameter. */
export interface Bounds {
  readonly least: readonly number[];
  readonly most: readonly number[];
}

/**
 * Nonlinear least squares by the rule of Levenberg and Marquardt, damping each parameter in its own unit. Ends when a
 * full step would lower the sum of squares by less than 1e-20 of itself (or of 1e-30, where it is nothing). Between
 * bounds, a parameter that rests on one and is drawn beyond it is held there for the step, and steps end at the bounds.
 */
export const leastSquares = (
  residualsAt: (parameters: readonly number[]) => Residuals,
  start: readonly number[],
  bounds: Bounds = { least: [], most: [] },
): LeastSquaresOutcome => {
  let parameters = start.map((value, i) => within(value, i, bounds));
  let here = residualsAt(parameters);
  let rss = dot(here.values, here.values);
  let damping = 1e-3;
  for (let iterations = 0; iterations < 500; iterations += 1) {
    const full = transposedTimes(here.slopes, here.values);
    const held = full.map((slope, i) => isDrawnBeyond(slope, parameters[i] ?? NaN, i, bounds));
    const gradient = full.map((slope, i) => (held[i] === true ? 0 : slope));
    const curvature = setApart(
      weightedCross(
        here.slopes,
        here.values.map(() => 1),
      ),
      held,
      1,
    );
    const inverse = invertFree(curvature, held);
    if (inverse !== undefined) {
      const gain = dot(times(inverse, gradient), gradient);
      if (gain <= 1e-20 * rss + 1e-30) {
        return { ok: true, parameters, rss, unscaledCovariance: inverse, iterations };
      }
    }
    const step = dampedStep(curvature, gradient, damping);
    if (step === null) return { ok: false, reason: 'dependent-parameters' };
    const trial = parameters.map((value, i) => within(value - (step[i] ?? NaN), i, bounds));
    const there = residualsAt(trial);
    const trialRss = dot(there.values, there.values);
    if (trialRss < rss) {
      [parameters, here, rss] = [trial, there, trialRss];
      damping = Math.max(damping / 10, 1e-12);
    } else if (damping > 1e12) {
      // Rounding lets nothing sink any more.
      return inverse === undefined
        ? { ok: false, reason: 'dependent-parameters' }
        : { ok: true, parameters, rss, unscaledCovariance: inverse, iterations };
    } else {
      damping *= 10;
    }
  }
  return { ok: false, reason: 'not-converged' };
};

const within = (value: number, i: number, { least, most }: Bounds): number =>
  Math.min(most[i] ?? Infinity, Math.max(least[i] ?? -Infinity, value));

/** The sum of squares would sink further only on the far side of a bound. */
const isDrawnBeyond = (slope: number, value: number, i: number, { least, most }: Bounds): boolean =>
  (slope > 0 && value <= (least[i] ?? -Infinity)) || (slope < 0 && value >= (most[i] ?? Infinity));

/** The matrix with the held parameters' rows and columns 0, but for so much on the diagonal. */
const setApart = (matrix: Matrix, held: readonly boolean[], diagonal: number): Matrix =>
  matrix.map((row, i) =>
    row.map((value, j) => {
      if (held[i] !== true && held[j] !== true) return value;
      return i === j ? diagonal : 0;
    }),
  );

const invertFree = (curvature: Matrix, held: readonly boolean[]): Matrix | undefined => {
  const inverse = invertPositive(curvature)?.inverse;
  return inverse === undefined ? undefined : setApart(inverse, held, 0);
};

const transposedTimes = (rows: Matrix, values: readonly number[]): readonly number[] =>
  (rows[0] ?? []).map((_, k) =>
    rows.reduce((sum, row, i) => sum + (row[k] ?? NaN) * (values[i] ?? NaN), 0),
  );

const dampedStep = (
  curvature: Matrix,
  gradient: readonly number[],
  damping: number,
): readonly number[] | null => {
  const damped = curvature.map((row, i) =>
    row.map((value, j) => (i === j ? value * (1 + damping) : value)),
  );
  const inverse = invertPositive(damped)?.inverse;
  return inverse === undefined ? null : times(inverse, gradient);
};
