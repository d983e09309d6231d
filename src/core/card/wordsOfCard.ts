import { foundBy } from '../search/sought.ts';
import type { Card } from './card.ts';

/** By which words a card's sheet is found, beside its code. */
export const wordsOfCard = ({ note }: Pick<Card, 'note'>): string => foundBy([note]);
