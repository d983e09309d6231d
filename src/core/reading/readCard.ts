import type { Card } from '../card/card.ts';
import { settingKey } from '../machine/setting.ts';
import { problemOf, type Problem } from '../problem.ts';
import { foldEvent, nothingSaid, readingOf, type SaidOfCell } from './cellEvent.ts';
import type { CellAsRead, ReadingEvent } from './readingEvent.ts';
import { standingEvents, withoutRepeats } from './standing.ts';

export interface CardAsRead {
  /** In the order of the card's cells. */
  readonly cells: readonly CellAsRead[];
  /** What was left out of the fold, and why. */
  readonly leftOut: readonly Problem[];
}

/**
 * The card as it stands after all that was said of it. Of two things said of one cell the later in order wins; a cell
 * may be graded, have its edge graded and its setting corrected independently; an edge is one of a shape that came out. Events of other cards are passed over; events for cells
 * that the card does not have are left out and reported. O(events + cells).
 */
export const readCard = (card: Card, events: readonly ReadingEvent[]): CardAsRead => {
  const own = events.filter(({ cardCode }) => cardCode === card.code);
  const said = new Map<string, SaidOfCell>();
  for (const event of standingEvents(own)) {
    if (event.kind !== 'undone')
      said.set(event.cell, foldEvent(said.get(event.cell) ?? nothingSaid, event));
  }
  const asDesigned = new Map(card.rungs.map(({ letter, setting }) => [letter, setting]));
  const cells = card.cells.flatMap(({ id, rung }): CellAsRead[] => {
    const designed = asDesigned.get(rung);
    if (designed === undefined) return []; // a card whose cell names no rung cannot be made; see the card's own check
    const saidOf = said.get(id) ?? nothingSaid;
    const { asCut } = saidOf;
    const corrected = asCut !== undefined && settingKey(asCut) !== settingKey(designed);
    return [{ id, rung, setting: asCut ?? designed, corrected, reading: readingOf(saidOf) }];
  });
  return { cells, leftOut: leftOut(card, own) };
};

const leftOut = (card: Card, events: readonly ReadingEvent[]): readonly Problem[] => {
  const cells = new Set(card.cells.map(({ id }) => id));
  const ids = new Set(events.map(({ id }) => id));
  return withoutRepeats(events).flatMap((event): readonly Problem[] => {
    if (event.kind === 'undone')
      return ids.has(event.eventId)
        ? []
        : [problemOf('undo-of-unknown-event', { card: card.code, event: event.eventId })];
    return cells.has(event.cell)
      ? []
      : [problemOf('event-for-unknown-cell', { card: card.code, cell: event.cell })];
  });
};
