import type { Card } from '../card/card.ts';
import { settingKey } from '../machine/setting.ts';
import { problemOf, type Problem } from '../problem.ts';
import type { EdgeAsRead } from './edge.ts';
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
      said.set(event.cell, later(said.get(event.cell) ?? nothingSaid, event));
  }
  const asDesigned = new Map(card.rungs.map(({ letter, setting }) => [letter, setting]));
  const cells = card.cells.flatMap(({ id, rung }): CellAsRead[] => {
    const designed = asDesigned.get(rung);
    if (designed === undefined) return []; // a card whose cell names no rung cannot be made; see the card's own check
    const { reading, asCut, edge } = said.get(id) ?? nothingSaid;
    const corrected = asCut !== undefined && settingKey(asCut) !== settingKey(designed);
    return [{ id, rung, setting: asCut ?? designed, corrected, reading: withEdge(reading, edge) }];
  });
  return { cells, leftOut: leftOut(card, own) };
};

interface SaidOfCell {
  readonly reading: CellAsRead['reading'];
  readonly asCut?: CellAsRead['setting'];
  /** Null: taken back. */
  readonly edge?: EdgeAsRead | null;
}

const nothingSaid: SaidOfCell = { reading: { kind: 'unread' } };

const withEdge = (
  reading: CellAsRead['reading'],
  edge: EdgeAsRead | null | undefined,
): CellAsRead['reading'] =>
  edge && reading.kind === 'graded' && reading.grade === 'out' ? { ...reading, edge } : reading;

const later = (said: SaidOfCell, event: Exclude<ReadingEvent, { kind: 'undone' }>): SaidOfCell => {
  switch (event.kind) {
    case 'graded': {
      const how = event.how === undefined ? {} : { how: event.how };
      const source = event.source === undefined ? {} : { source: event.source };
      return { ...said, reading: { kind: 'graded', grade: event.grade, ...how, ...source } };
    }
    case 'spoilt':
      return { ...said, reading: { kind: 'spoilt', reason: event.reason }, edge: null };
    case 'cleared':
      return { ...said, reading: { kind: 'unread' }, edge: null };
    case 'edge': {
      const taped = event.taped === undefined ? {} : { taped: event.taped };
      return { ...said, edge: event.edge === null ? null : { edge: event.edge, ...taped } };
    }
    case 'as-cut':
      return { ...said, asCut: event.setting };
  }
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
