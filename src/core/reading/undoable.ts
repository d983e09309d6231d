import type { ReadingEvent } from './readingEvent.ts';
import { standingEvents } from './standing.ts';

/** The event that Undo would take back: the last that stands and is no undo itself. Give the events of one card. */
export const undoable = (events: readonly ReadingEvent[]): ReadingEvent | undefined =>
  standingEvents(events).findLast(({ kind }) => kind !== 'undone');

/**
 * The undo that Redo would take back: the last that stands and took back something said, unless something new was said
 * since. Give the events of one card.
 */
export const redoable = (events: readonly ReadingEvent[]): ReadingEvent | undefined => {
  const said = new Set(events.filter(({ kind }) => kind !== 'undone').map(({ id }) => id));
  const standing = standingEvents(events);
  const at = standing.findLastIndex((event) => event.kind === 'undone' && said.has(event.eventId));
  const newerSaid = standing.findLastIndex(({ kind }) => kind !== 'undone') > at;
  return newerSaid ? undefined : standing[at];
};
