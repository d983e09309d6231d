import { logChoose } from './logChoose.ts';
import type { BinaryFit } from './binaryRegression.ts';
import type { BinaryRow } from './separation.ts';

export interface GoodnessOfFit {
  /** Twice the log-likelihood that is missing to a model with one probability for each row. */
  readonly deviance: number;
  /** The same for one common probability. */
  readonly nullDeviance: number;
  readonly residualDegrees: number;
  /** Σ (y − np)²/(np(1 − p)). */
  readonly pearsonChiSquare: number;
  /** The log-likelihood with the binomial coefficients in it. */
  readonly logLikelihoodWithConstant: number;
}

/** How well a binary regression meets its data. */
export const goodnessOfFit = (data: readonly BinaryRow[], fit: BinaryFit): GoodnessOfFit => {
  const total = data.reduce((sum, row) => sum + row.trials, 0);
  const share = data.reduce((sum, row) => sum + row.successes, 0) / total;
  const saturated = data.reduce((sum, row) => sum + logShare(row, row.successes / row.trials), 0);
  const common = data.reduce((sum, row) => sum + logShare(row, share), 0);
  return {
    deviance: 2 * (saturated - fit.logLikelihood),
    nullDeviance: 2 * (saturated - common),
    residualDegrees: data.length - fit.coefficients.length,
    pearsonChiSquare: data.reduce((sum, { trials, successes }, i) => {
      const p = fit.fitted[i] ?? NaN;
      return sum + (successes - trials * p) ** 2 / (trials * p * (1 - p));
    }, 0),
    logLikelihoodWithConstant:
      fit.logLikelihood + data.reduce((sum, row) => sum + logChoose(row.trials, row.successes), 0),
  };
};

const logShare = ({ trials, successes }: BinaryRow, p: number): number =>
  (successes > 0 ? successes * Math.log(p) : 0) +
  (successes < trials ? (trials - successes) * Math.log1p(-p) : 0);
