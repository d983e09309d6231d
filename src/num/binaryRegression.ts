import { links, type LinkName } from './link.ts';
import { solveByScoring, type Standing } from './scoring.ts';
import { separationOf, type BinaryRow, type Separation } from './separation.ts';
import {
  dot,
  invertPositive,
  times,
  weightedCross,
  weightedSum,
  type Matrix,
} from './symmetricMatrix.ts';

export interface BinaryFit {
  readonly link: LinkName;
  readonly coefficients: readonly number[];
  /** Inverse of the expected (Fisher) information. */
  readonly covariance: Matrix;
  /** Fitted probability of success, a row each. */
  readonly fitted: readonly number[];
  /** Σ y·ln p + (n − y)·ln(1 − p), without the binomial constant. */
  readonly logLikelihood: number;
  readonly iterations: number;
}

export type BinaryOutcome =
  | ({ readonly ok: true } & BinaryFit)
  | { readonly ok: false; readonly reason: 'separated'; readonly separation: Separation }
  | { readonly ok: false; readonly reason: 'not-converged' | 'dependent-covariates' };

/**
 * Binary regression by maximum likelihood: link(P(success)) = x·β. Where the data are separated no finite estimate
 * exists, and that is said instead of a number. Fisher scoring; O(rows·covariates²) a step.
 */
export const fitBinary = (data: readonly BinaryRow[], link: LinkName): BinaryOutcome => {
  const separation = separationOf(data);
  if (separation !== 'none') return { ok: false, reason: 'separated', separation };
  return fitAdjusted(data, link, 'none');
};

/**
 * The same with a bias-reducing adjustment of the score, which keeps the estimate finite whatever the data.
 * `mean-bias`: Firth 1993, Kosmidis & Firth 2009: + ½·Σ hᵢ·(p″/p′)·x. `jeffreys`: the top of the likelihood times the
 * root of the information's determinant: + ½·Σ hᵢ·(w′/w)·x. For the logit they are one and the same, Firth's logistic
 * regression. hᵢ is the leverage of row i.
 */
export const fitBiasReduced = (
  data: readonly BinaryRow[],
  link: LinkName,
  adjustment: 'mean-bias' | 'jeffreys' = 'mean-bias',
): BinaryOutcome => fitAdjusted(data, link, adjustment);

type Adjustment = 'none' | 'mean-bias' | 'jeffreys';

const fitAdjusted = (
  data: readonly BinaryRow[],
  link: LinkName,
  adjustment: Adjustment,
): BinaryOutcome => {
  const rows = data.map((row) => row.x);
  const solved = solveByScoring(
    (beta) => standingAt(data, link, adjustment, beta),
    start(data, link),
  );
  if (!solved.ok) return solved;
  const { parameters: coefficients, covariance, iterations } = solved;
  const etas = times(rows, coefficients);
  return {
    ok: true,
    link,
    coefficients,
    covariance,
    fitted: etas.map(links[link].probability),
    logLikelihood: logLikelihoodAt(data, link, etas),
    iterations,
  };
};

const standingAt = (
  data: readonly BinaryRow[],
  name: LinkName,
  adjustment: Adjustment,
  beta: readonly number[],
): Standing => {
  const link = links[name];
  const rows = data.map((row) => row.x);
  const etas = times(rows, beta);
  const weights = etas.map((eta, i) => (data[i]?.trials ?? NaN) * link.gain(eta) * link.loss(eta));
  const information = weightedCross(rows, weights);
  const pulls = data.map(({ trials, successes }, i) => {
    const eta = etas[i] ?? NaN;
    // 0·Infinity far out would be NaN: what was not seen pulls nowhere.
    const up = successes > 0 ? successes * link.gain(eta) : 0;
    const down = successes < trials ? (trials - successes) * link.loss(eta) : 0;
    return up - down;
  });
  const height = logLikelihoodAt(data, name, etas);
  if (adjustment === 'none') return { score: weightedSum(rows, pulls), information, height };
  const inverted = invertPositive(information);
  const inverse = inverted?.inverse ?? [];
  const tilt = adjustment === 'mean-bias' ? link.slopeTilt : link.weightTilt;
  const adjusted = pulls.map((pull, i) => {
    const row = rows[i] ?? [];
    const leverage = (weights[i] ?? NaN) * dot(times(inverse, row), row);
    return pull + (leverage * tilt(etas[i] ?? NaN)) / 2;
  });
  const score = weightedSum(rows, adjusted);
  const isSlopeOfHeight = adjustment === 'jeffreys' || name === 'logit';
  if (!isSlopeOfHeight || inverted === null) return { score, information };
  return { score, information, height: height + inverted.logDeterminant / 2 };
};

const logLikelihoodAt = (
  data: readonly BinaryRow[],
  name: LinkName,
  etas: readonly number[],
): number =>
  data.reduce((sum, { trials, successes }, i) => {
    const eta = etas[i] ?? NaN;
    const up = successes > 0 ? successes * links[name].logProbability(eta) : 0;
    const down = successes < trials ? (trials - successes) * links[name].logComplement(eta) : 0;
    return sum + up + down;
  }, 0);

/** Weighted least squares through the observed shares, pulled off 0 and 1. */
const start = (data: readonly BinaryRow[], name: LinkName): readonly number[] => {
  const rows = data.map((row) => row.x);
  const weights = data.map((row) => row.trials);
  const responses = data.map(({ trials, successes }) =>
    links[name].predictor((successes + 0.5) / (trials + 1)),
  );
  const inverse = invertPositive(weightedCross(rows, weights))?.inverse;
  const right = weightedSum(
    rows,
    responses.map((response, i) => response * (weights[i] ?? NaN)),
  );
  return inverse === undefined ? right.map(() => 0) : times(inverse, right);
};
