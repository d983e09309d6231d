import { believedLaw } from '../card/believedLaw.ts';
import type { Card } from '../card/card.ts';
import type { BelievedChangeover } from '../card/cardRequest.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import { believedChangeover, thinkableFrom } from './believedChangeover.ts';

/**
 * The changeover to which a card's files are held: the one that it was designed for, but none slower than is thinkable for the
 * sheet whatever the card says; of a card that was only described, as its sheet is known: `answer` is what
 * `answerToDesignBy` says of it.
 */
export const believedForCard = (
  study: CutStudy,
  { believed }: Card,
  answer: FitAnswer | undefined,
): BelievedChangeover => {
  if (believed === undefined) return believedChangeover(study, answer);
  const law = believedLaw(believed, study.machine);
  const least = thinkableFrom(study);
  return (powerPct) => ({ ...law(powerPct), thinkableFromMmPerS: least(powerPct) });
};
