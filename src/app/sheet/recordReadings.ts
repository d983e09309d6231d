import { saidBy, type Author } from '../../core/author.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { fitsACard } from '../../core/reading/fitsACard.ts';
import type { ReadingEvent } from '../../core/reading/readingEvent.ts';
import type { Ports } from '../ports/ports.ts';

export interface ReadingsRecorded {
  /** How many were new. */
  readonly stored: number;
  readonly revision: number;
}

/**
 * Adds what was said of cards: all of it or nothing. An event sent twice is stored once, so that a page that does not
 * know whether it was heard may repeat itself. What was said before is not read for it: a tap on a sheet of many
 * readings costs what it costs on a sheet of few. They are said by whoever sends them, whatever stands in them. Refuses: `study-not-found`, `card-not-found`, `cell-not-on-card`.
 */
export const recordReadings = (
  { store, clock, ...author }: Ports & Author,
  studyId: string,
  events: readonly ReadingEvent[],
): Promise<Outcome<ReadingsRecorded>> =>
  store.change(async (session) => {
    const found = await session.cardsOf(studyId);
    if (found === undefined) return refused('study-not-found', { id: studyId });
    for (const event of events) {
      const fitting = fitsACard(event, found.cards);
      if (!fitting.ok) return fitting;
    }
    const said = events.map((event) => saidBy(event, author));
    const stored = await session.appendEvents(studyId, said);
    const revision = stored === 0 ? found.revision : await session.touch(studyId, clock.now());
    return done({ stored, revision });
  });
