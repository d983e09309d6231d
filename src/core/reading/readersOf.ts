import type { Author } from '../author.ts';
import type { ReadingEvent } from './readingEvent.ts';
import { standingEvents } from './standing.ts';

/** Who read some of a card. */
export interface CardReader extends Author {
  /** Shapes of which this one said last what became of them. */
  readonly shapes: number;
  /** ISO 8601, UTC: the last of them. */
  readonly lastAt: string;
}

/**
 * Who read a card, by what stands of it now: a shape is counted for whoever said last what became of it. Whoever read most
 * comes first. Give the events of one card. O(n log n).
 */
export const readersOf = (events: readonly ReadingEvent[]): readonly CardReader[] => {
  const saidOf = new Map<string, ReadingEvent>();
  for (const event of standingEvents(events)) {
    if (event.kind === 'graded' || event.kind === 'spoilt') saidOf.set(event.cell, event);
    else if (event.kind === 'cleared') saidOf.delete(event.cell);
  }
  const readers = new Map<string | undefined, CardReader>();
  for (const { by, at } of saidOf.values()) {
    const { shapes = 0, lastAt = at } = readers.get(by) ?? {};
    readers.set(by, {
      ...(by === undefined ? {} : { by }),
      shapes: shapes + 1,
      lastAt: at > lastAt ? at : lastAt,
    });
  }
  return [...readers.values()].sort((a, b) => b.shapes - a.shapes);
};
