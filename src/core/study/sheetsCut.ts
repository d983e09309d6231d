import type { Card } from '../card/card.ts';
import { sheetOfCard } from '../card/sheetOfCard.ts';
import type { Study } from './study.ts';

/** A board that cards of a study were cut from. */
export interface SheetCut {
  readonly sheet: string;
  readonly batch?: string;
  /** Codes, as they were added. */
  readonly cards: readonly string[];
  /** Whether its owner gave it the name. */
  readonly isNamed: boolean;
}

/** The boards that a study's cards were cut from, the last first; equal names in two batches are two boards. O(cards²). */
export const sheetsCut = ({ cards }: Pick<Study, 'cards'>): readonly SheetCut[] => {
  const sheets = new Map<string, SheetCut>();
  for (const card of cards) {
    const key = keyOf(card);
    const before = sheets.get(key);
    sheets.delete(key);
    sheets.set(key, {
      sheet: sheetOfCard(card),
      ...(card.batch === undefined ? {} : { batch: card.batch }),
      cards: [...(before?.cards ?? []), card.code],
      isNamed: card.sheet !== undefined && !cards.some(({ code }) => card.sheet === ownOf(code)),
    });
  }
  return [...sheets.values()].toReversed();
};

const keyOf = (card: Card): string => `${card.batch ?? ''}\u0000${sheetOfCard(card)}`;
const ownOf = (code: string): string => sheetOfCard({ code });
