import { dot, invertPositive, times, type Matrix } from './symmetricMatrix.ts';

/** A model at one point of its parameters. */
export interface Standing {
  /** What is to be made zero: the score, perhaps adjusted. */
  readonly score: readonly number[];
  /** Symmetric positive definite near the solution. */
  readonly information: Matrix;
  /** What the score is the slope of; absent where there is no such function. */
  readonly height?: number;
}

export interface Scored {
  readonly parameters: readonly number[];
  /** Inverse of the information at the solution. */
  readonly covariance: Matrix;
  readonly iterations: number;
}

export type ScoringOutcome =
  | ({ readonly ok: true } & Scored)
  | { readonly ok: false; readonly reason: 'not-converged' | 'dependent-covariates' };

/**
 * Solves score = 0 by scoring: steps of information⁻¹·score, halved while they do not climb (or, where nothing is to be
 * climbed, while the score does not shrink in the information's own measure). Ends with the
 * first step of less than 1e-10 standard errors.
 */
export const solveByScoring = (
  standingAt: (parameters: readonly number[]) => Standing,
  start: readonly number[],
): ScoringOutcome => {
  let parameters = start;
  let standing = standingAt(parameters);
  for (let iterations = 0; iterations < 200; iterations += 1) {
    const inverse = invertPositive(standing.information)?.inverse;
    if (inverse === undefined) return { ok: false, reason: 'dependent-covariates' };
    const step = times(inverse, standing.score);
    const size = dot(step, standing.score);
    if (size < 1e-20) {
      const last = parameters.map((value, i) => value + (step[i] ?? NaN));
      const covariance = invertPositive(standingAt(last).information)?.inverse ?? inverse;
      return { ok: true, parameters: last, covariance, iterations };
    }
    const moved = halvedStep(standingAt, { parameters, standing, step, size });
    if (moved === null) {
      // Nothing climbs any more: rounding, if the score is as good as zero.
      if (size < 1e-12) return { ok: true, parameters, covariance: inverse, iterations };
      return { ok: false, reason: 'not-converged' };
    }
    ({ parameters, standing } = moved);
  }
  return { ok: false, reason: 'not-converged' };
};

const halvedStep = (
  standingAt: (parameters: readonly number[]) => Standing,
  from: {
    readonly parameters: readonly number[];
    readonly standing: Standing;
    readonly step: readonly number[];
    readonly size: number;
  },
): { readonly parameters: readonly number[]; readonly standing: Standing } | null => {
  for (let part = 1; part > 1e-9; part /= 2) {
    const parameters = from.parameters.map((value, i) => value + part * (from.step[i] ?? NaN));
    const standing = standingAt(parameters);
    if (isBetter(standing, from)) return { parameters, standing };
  }
  return null;
};

const isBetter = (
  standing: Standing,
  from: { readonly standing: Standing; readonly size: number },
): boolean => {
  const sizeHere = (): number => {
    const inverse = invertPositive(standing.information)?.inverse;
    return inverse === undefined ? Infinity : dot(times(inverse, standing.score), standing.score);
  };
  if (standing.height === undefined || from.standing.height === undefined)
    return sizeHere() < from.size;
  // Near the top the height no longer shows a climb: there the score decides.
  const climb = standing.height - from.standing.height;
  return from.size < 1e-8 * (1 + Math.abs(standing.height)) ? sizeHere() < from.size : climb > 0;
};
