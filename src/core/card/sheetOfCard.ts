import type { Card } from './card.ts';

/**
 * The board that a card is cut from: as its owner calls it, else one of the card's own. Two cards of one board have one name
 * here, so a later card may say that it is cut from “card K7QX” of before.
 */
export const sheetOfCard = ({ code, sheet }: Pick<Card, 'code' | 'sheet'>): string =>
  sheet ?? `card ${code}`;
