import { designCard, type DesignedCard } from '../../core/card/designCard.ts';
import type { FitAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { Outcome } from '../../core/problem.ts';
import {
  cardRequestKnowing,
  handPieceMm,
  usualCard,
  type CardWish as AnyCardWish,
} from '../../core/study/cardRequestKnowing.ts';
import type { Study } from '../../core/study/study.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';

/** What the form of a card always says of it. */
type Said = 'seed' | 'vary' | 'powerPct' | 'cellsEach' | 'shape' | 'sizeMm' | 'sheetMm';

/** What a person may wish of a card; the study says the rest. */
export type CardWish = AnyCardWish & Required<Pick<AnyCardWish, Said>>;

export const usualWish = (code: string, powerPct: number): CardWish => ({
  ...usualCard,
  code,
  powerPct,
  sheetMm: handPieceMm,
});

/** Designs a card for this study on this page: the picture moves with the wish. */
export const designFor = (
  study: Study,
  wish: CardWish,
  answer: FitAnswer | undefined,
): Outcome<DesignedCard> => designCard(cardRequestKnowing(toCutStudy(study), wish, answer));
