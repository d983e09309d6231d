import type { Card } from '../card/card.ts';
import { done, refused, type Outcome } from '../problem.ts';
import type { ReadingEvent } from './readingEvent.ts';

/** Whether an event speaks of a cell that one of the cards has. Refuses: `card-not-found`, `cell-not-on-card`. */
export const fitsACard = (event: ReadingEvent, cards: readonly Card[]): Outcome<undefined> => {
  const card = cards.find(({ code }) => code === event.cardCode);
  if (card === undefined) return refused('card-not-found', { card: event.cardCode });
  if (event.kind === 'undone' || card.cells.some(({ id }) => id === event.cell))
    return done(undefined);
  return refused('cell-not-on-card', { card: event.cardCode, cell: event.cell });
};
