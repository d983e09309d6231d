import { dot, invertPositive, times, weightedCross, type Matrix } from './symmetricMatrix.ts';

export interface LeastSquaresFit {
  readonly parameters: readonly number[];
  /** Sum of the squared residuals. */
  readonly rss: number;
  /** Inverse of JᵀJ at the fit; times rss/(n − parameters) it is the usual covariance. */
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

/**
 * Nonlinear least squares by the rule of Levenberg and Marquardt, damping each parameter in its own unit. Ends when a
 * full step would lower the sum of squares by less than 1e-20 of itself (or of 1e-30, where it is nothing).
 */
export const leastSquares = (
  residualsAt: (parameters: readonly number[]) => Residuals,
  start: readonly number[],
): LeastSquaresOutcome => {
  let parameters = start;
  let here = residualsAt(parameters);
  let rss = dot(here.values, here.values);
  let damping = 1e-3;
  for (let iterations = 0; iterations < 500; iterations += 1) {
    const gradient = transposedTimes(here.slopes, here.values);
    const curvature = weightedCross(
      here.slopes,
      here.values.map(() => 1),
    );
    const inverse = invertPositive(curvature)?.inverse;
    if (inverse !== undefined) {
      const gain = dot(times(inverse, gradient), gradient);
      if (gain <= 1e-20 * rss + 1e-30) {
        return { ok: true, parameters, rss, unscaledCovariance: inverse, iterations };
      }
    }
    const step = dampedStep(curvature, gradient, damping);
    if (step === null) return { ok: false, reason: 'dependent-parameters' };
    const trial = parameters.map((value, i) => value - (step[i] ?? NaN));
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
