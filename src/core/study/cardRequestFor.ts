import type { CardRequest } from '../card/cardRequest.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import { answerWithEarlier } from './answerWithEarlier.ts';
import { cardRequestKnowing, type CardWish } from './cardRequestKnowing.ts';
import type { EarlierSheet } from './earlierSheet.ts';

/** The request for a card, with what is known so far; absent: what {@link answerToDesignBy} says. */
export const cardRequestFor = (
  study: CutStudy,
  wish: CardWish,
  answer: FitAnswer | undefined = answerToDesignBy(study),
): CardRequest => cardRequestKnowing(study, wish, answer);

/** What is known before a card is designed; nothing where neither this sheet nor an earlier one was read. ~0.1 s. */
export const answerToDesignBy = (
  study: CutStudy,
  earlier: readonly EarlierSheet[] = [],
): FitAnswer | undefined =>
  observed(study) || earlier.length > 0 ? answerWithEarlier(study, 'fastest', earlier) : undefined;

const observed = ({ cells, tallies, habit }: CutStudy): boolean =>
  cells.length > 0 || tallies.length > 0 || habit !== undefined;
