import type { Card } from './card.ts';
import { sheetOfCard } from './sheetOfCard.ts';

/** The delivery, and the board of it, that something is cut from; of whatever names them, these two alone. */
export const boardOf = ({
  batch,
  sheet,
}: Pick<Card, 'batch' | 'sheet'>): Pick<Card, 'batch' | 'sheet'> => ({
  ...(batch === undefined ? {} : { batch }),
  ...(sheet === undefined ? {} : { sheet }),
});

/** The board that a card was cut from, so that another can be said to be of the same. */
export const boardOfCard = (
  card: Pick<Card, 'code' | 'batch' | 'sheet'>,
): Pick<Card, 'batch' | 'sheet'> => boardOf({ ...card, sheet: sheetOfCard(card) });
