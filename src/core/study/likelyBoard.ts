import type { Card } from '../card/card.ts';
import { boardOf, boardOfCard } from '../card/boardOf.ts';
import type { Study } from './study.ts';

/**
 * The board that a study's next card is most likely cut from: the one that its stock names, else that of the card before,
 * as long as no other delivery came since. Two cards taken for one board where they are two cost a little speed; two taken
 * for two boards where they are one hide how much boards differ, which would be the bolder mistake.
 */
export const likelyBoard = ({
  cards,
  stock,
}: Pick<Study, 'cards' | 'stock'>): Pick<Card, 'batch' | 'sheet'> => {
  const last = cards.at(-1);
  const goesOn = stock.sheet === undefined && last !== undefined && last.batch === stock.batch;
  return goesOn ? boardOfCard(last) : boardOf(stock);
};
