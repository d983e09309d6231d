import type { ReadingEvent } from './readingEvent.ts';

/**
 * The events that stand after every undo, and every undo of an undo, in the order in which they were stored. An event
 * that arrived twice (same id) counts once, the first. An undo may be stored before what it undoes, as happens when the
 * readings of two phones are put together. O(n), without recursion.
 */
export const standingEvents = (events: readonly ReadingEvent[]): readonly ReadingEvent[] => {
  const once = withoutRepeats(events);
  const takenBack = takenBackIds(once);
  return once.filter(({ id }) => !takenBack.has(id));
};

/** The first of each id. */
export const withoutRepeats = (events: readonly ReadingEvent[]): readonly ReadingEvent[] => {
  const seen = new Set<string>();
  return events.filter(({ id }) => !seen.has(id) && seen.add(id));
};

const takenBackIds = (events: readonly ReadingEvent[]): ReadonlySet<string> => {
  /** By event id: how many undos of it are not yet known to stand or to be taken back themselves. */
  const open = new Map<string, number>();
  for (const event of events) {
    if (event.kind === 'undone') open.set(event.eventId, (open.get(event.eventId) ?? 0) + 1);
  }
  const byId = new Map(events.map((event) => [event.id, event]));
  const takenBack = new Set<string>();
  const settled = events.filter(({ id }) => !open.has(id));
  // Invariant: nothing still to come can take back an event in `settled`. Undos that form a ring never settle and
  // stand, together with what they would have undone: nothing is lost by them.
  for (let event = settled.pop(); event !== undefined; event = settled.pop()) {
    if (event.kind !== 'undone') continue;
    if (!takenBack.has(event.id)) takenBack.add(event.eventId);
    const left = (open.get(event.eventId) ?? 1) - 1;
    open.set(event.eventId, left);
    const target = byId.get(event.eventId);
    if (left === 0 && target !== undefined) settled.push(target);
  }
  return takenBack;
};
