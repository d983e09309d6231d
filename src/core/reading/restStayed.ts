import type { Card } from '../card/card.ts';
import { readCard } from './readCard.ts';
import type { ReadingEvent } from './readingEvent.ts';

interface Stamp {
  readonly newId: () => string;
  /** ISO 8601, UTC. */
  readonly at: string;
}

/** What says that every shape left over on cards that were read in part is not through. One time, so one undo. */
export const restStayed = (
  { cards, events }: { readonly cards: readonly Card[]; readonly events: readonly ReadingEvent[] },
  { newId, at }: Stamp,
): readonly ReadingEvent[] =>
  cards.flatMap((card): readonly ReadingEvent[] => {
    const { cells } = readCard(card, events);
    const unread = cells.filter(({ reading }) => reading.kind === 'unread');
    if (unread.length === cells.length) return [];
    return unread.map(({ id }) => ({
      id: newId(),
      cardCode: card.code,
      at,
      kind: 'graded',
      cell: id,
      grade: 'stays',
    }));
  });
