import { inverseMills, logNormalCdf, normalCdf, normalQuantile } from './normal.ts';

export type LinkName = 'logit' | 'probit' | 'cloglog';

/**
 * How a probability p hangs on a linear predictor η. All are written so that neither tail loses its digits; w = p′²/pq
 * is the weight of one trial in the expected information.
 */
export interface Link {
  readonly probability: (eta: number) => number;
  readonly logProbability: (eta: number) => number;
  /** Logarithm of 1 − p. */
  readonly logComplement: (eta: number) => number;
  /** p′/p. */
  readonly gain: (eta: number) => number;
  /** p′/(1 − p). With {@link gain}, w = gain · loss. */
  readonly loss: (eta: number) => number;
  /** p″/p′. */
  readonly slopeTilt: (eta: number) => number;
  /** w′/w. */
  readonly weightTilt: (eta: number) => number;
  /** The η at which the probability is p. */
  readonly predictor: (p: number) => number;
}

/** p = 1/(1 + e^−η). */
const logistic = (eta: number): number => 1 / (1 + Math.exp(-eta));

/** ln(1 + e^η), for any size of η. */
const softPlus = (eta: number): number => Math.max(eta, 0) + Math.log1p(Math.exp(-Math.abs(eta)));

const logit: Link = {
  probability: logistic,
  logProbability: (eta) => -softPlus(-eta),
  logComplement: (eta) => -softPlus(eta),
  gain: (eta) => logistic(-eta),
  loss: logistic,
  slopeTilt: (eta) => 1 - 2 * logistic(eta),
  weightTilt: (eta) => 1 - 2 * logistic(eta),
  predictor: (p) => Math.log(p) - Math.log1p(-p),
};

const probit: Link = {
  probability: normalCdf,
  logProbability: logNormalCdf,
  logComplement: (eta) => logNormalCdf(-eta),
  gain: inverseMills,
  loss: (eta) => inverseMills(-eta),
  slopeTilt: (eta) => -eta,
  weightTilt: (eta) => inverseMills(-eta) - inverseMills(eta) - 2 * eta,
  predictor: normalQuantile,
};

/** p′/p of the complementary log-log: e^η/(e^(e^η) − 1), which nears 1 far below zero. */
const cloglogGain = (eta: number): number => {
  const hazard = Math.exp(eta);
  return hazard < 1e-17 ? 1 : hazard / Math.expm1(hazard);
};

/** ln(−ln(1 − p)) = η. */
const cloglog: Link = {
  probability: (eta) => -Math.expm1(-Math.exp(eta)),
  logProbability: (eta) => Math.log(-Math.expm1(-Math.exp(eta))),
  logComplement: (eta) => -Math.exp(eta),
  gain: cloglogGain,
  loss: (eta) => Math.exp(eta),
  slopeTilt: (eta) => 1 - Math.exp(eta),
  weightTilt: (eta) => 2 - Math.exp(eta) - cloglogGain(eta),
  predictor: (p) => Math.log(-Math.log1p(-p)),
};

export const links: Readonly<Record<LinkName, Link>> = { logit, probit, cloglog };
