import { decisionOn } from '../cutmodel/decisionOn.ts';
import type { Fit, FittedStudy } from '../cutmodel/fit.ts';
import { recommend, lineOf, type NoRecommendation } from '../cutmodel/recommend.ts';
import type { Recommendation } from '../cutmodel/fitAnswer.ts';

/** The share that gives so many parts an even chance that none fails: what "none of 200" is taken to mean. */
export const shareForNone = (parts: number): number => 0.5 ** (1 / parts);

/** The setting that promises none of the order's parts to fail, as sure as the study's promise; or why there is none. */
export const promiseOfNone = (
  fitted: Fit,
  parts: number,
  partLengthMm: number,
): Recommendation | NoRecommendation => {
  const promise = { ...fitted.study.promise, outOf100: 100 * shareForNone(parts), partLengthMm };
  const asked: FittedStudy = {
    compiled: fitted.compiled,
    posterior: fitted.posterior,
    evidence: fitted.evidence,
    study: { ...fitted.study, promise },
    decision: decisionOn(fitted.compiled, fitted.posterior, promise),
  };
  return recommend(asked, lineOf(asked));
};
