import { answerForAim } from '../cutmodel/answerForAim.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import { fit, type Fit } from '../cutmodel/fit.ts';
import type { FitAnswer, NextCardAnswer } from '../cutmodel/fitAnswer.ts';
import { nextCardFrom, type NextCardWish } from '../cutmodel/nextCard.ts';
import type { EarlierSheet } from './earlierSheet.ts';
import { countEarlier, historyOf, type EarlierCount } from './historyOf.ts';
import type { Aim } from './study.ts';

/** An answer, and how much of earlier sheets stands behind it. */
export interface StudyAnswer extends FitAnswer {
  readonly leansOn: EarlierCount;
}

/**
 * The answer to a study with what earlier sheets taught, the one function by which page and server answer. Give the sheets
 * newest first, as `pickEarlier` does. ~0.1 s.
 */
export const answerWithEarlier = (
  study: CutStudy,
  aim: Aim,
  earlier: readonly EarlierSheet[],
): StudyAnswer => {
  const { found, sheets } = settledFit(study, earlier);
  return { ...answerForAim(found, aim), leansOn: countEarlier(sheets) };
};

/** The card that would teach most, with what earlier sheets taught in the same way. */
export const nextCardWithEarlier = (
  study: CutStudy,
  wish: NextCardWish,
  earlier: readonly EarlierSheet[],
): NextCardAnswer => nextCardFrom(fitWithEarlier(study, earlier), wish);

/** What stands behind such an answer, for those who go on computing. */
export const fitWithEarlier = (study: CutStudy, earlier: readonly EarlierSheet[]): Fit =>
  settledFit(study, earlier).found;

/**
 * Where the reckoning does not settle with all earlier sheets, it is made with the newest batch alone, and then without: an
 * earlier sheet never costs an answer.
 */
const settledFit = (
  study: CutStudy,
  earlier: readonly EarlierSheet[],
): { readonly found: Fit; readonly sheets: readonly EarlierSheet[] } => {
  const newest = earlier.filter(({ batch }) => batch === earlier[0]?.batch);
  const tries = newest.length < earlier.length ? [earlier, newest] : [earlier];
  for (const sheets of tries.filter(({ length }) => length > 0)) {
    const found = fit({ ...study, history: historyOf(sheets) });
    if (found.posterior.converged) return { found, sheets };
  }
  return { found: fit(study), sheets: [] };
};
