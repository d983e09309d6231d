import { decisionOn } from '../cutmodel/decision.ts';
import type { Fit, FittedStudy } from '../cutmodel/fit.ts';
import { recommend, lineOf, type NoRecommendation } from '../cutmodel/recommend.ts';
import type { Recommendation } from '../cutmodel/fitAnswer.ts';

/** The share that gives so many parts an even chance that none fails: what "none of 200" is taken to mean. */
export const shareForNone = (parts: number): number => 0.5 ** (1 / parts);

/** The setting that promises none of the order's parts to fail, as sure as the study's promise; or why there is none. */
export const promiseOfNone = (
  found: Fit,
  parts: number,
  partLengthMm: number,
): Recommendation | NoRecommendation => {
  const promise = { ...found.study.promise, outOf100: 100 * shareForNone(parts), partLengthMm };
  const asked: FittedStudy = {
    compiled: found.compiled,
    posterior: found.posterior,
    evidence: found.evidence,
    study: { ...found.study, promise },
    decision: decisionOn(found.compiled, found.posterior, promise),
  };
  return recommend(asked, lineOf(asked));
};
