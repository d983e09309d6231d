import { believedLaw } from '../card/believedLaw.ts';
import type { Card } from '../card/card.ts';
import type { BelievedChangeover } from '../card/cardRequest.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import { believedChangeover, thinkableFrom } from './believedChangeover.ts';
import { answerToDesignBy } from './cardRequestFor.ts';

/**
 * The changeover to which a card's files are held: the one that it was designed for, but none slower than is thinkable for the
 * sheet whatever the card says; of a card that was only described, as its sheet is known. ~0.1 s for the latter.
 */
export const believedForCard = (study: CutStudy, { believed }: Card): BelievedChangeover => {
  if (believed === undefined) return believedChangeover(study, answerToDesignBy(study));
  const law = believedLaw(believed, study.machine);
  const least = thinkableFrom(study);
  return (powerPct) => ({ ...law(powerPct), thinkableFromMmPerS: least(powerPct) });
};
