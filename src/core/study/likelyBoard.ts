import type { Card } from '../card/card.ts';
import { sheetOfCard } from '../card/sheetOfCard.ts';
import type { Study } from './study.ts';

/**
 * The board that a study's next card is most likely cut from: the one that its stock names, else that of the card before,
 * as long as no other delivery came since. Two cards taken for one board where they are two cost a little speed; two taken
 * for two boards where they are one hide how much boards differ, which would be the bolder mistake.
 */
export const likelyBoard = ({
  cards,
  stock: { batch, sheet },
}: Pick<Study, 'cards' | 'stock'>): Pick<Card, 'batch' | 'sheet'> => {
  const last = cards.at(-1);
  const named = sheet ?? (last?.batch === batch && last ? sheetOfCard(last) : undefined);
  return {
    ...(batch === undefined ? {} : { batch }),
    ...(named === undefined ? {} : { sheet: named }),
  };
};
