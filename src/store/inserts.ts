import type { Kysely } from 'kysely';
import type { Card } from '../core/card/card.ts';
import type { ReadingEvent } from '../core/reading/readingEvent.ts';
import type { StartedOrder } from '../core/study/startedOrder.ts';
import type { RecordedTally } from '../core/study/study.ts';
import { cardFoundBy, orderFoundBy } from './foundBy.ts';
import { tallyColumns } from './rows.ts';
import type { Tables } from './tables.ts';
import { nextPosition } from './nextPosition.ts';

/** Rows a statement: SQLite takes no more than 32 766 values at once. */
const rowsAtOnce = 1000;

const inParts = async <T>(rows: readonly T[], insert: (part: readonly T[]) => Promise<void>) => {
  for (let from = 0; from < rows.length; from += rowsAtOnce)
    await insert(rows.slice(from, from + rowsAtOnce));
};

/** Adds cards behind those of the study that are there. */
export const insertCards = async (
  db: Kysely<Tables>,
  studyId: string,
  cards: readonly Card[],
): Promise<void> => {
  const next = await nextPosition(db, 'card', studyId);
  const rows = cards.map((card, i) => ({
    study_id: studyId,
    code: card.code,
    position: next + i,
    body: JSON.stringify(card),
    ...cardFoundBy(card),
  }));
  await inParts(rows, async (part) => {
    await db.insertInto('card').values(part).execute();
  });
};

/** Adds events behind those of the study that are there; known ids are passed over. Gives how many were new. */
export const appendEvents = async (
  db: Kysely<Tables>,
  studyId: string,
  events: readonly ReadingEvent[],
): Promise<number> => {
  if (events.length === 0) return 0;
  const seen = new Set<string>();
  await inParts(events, async (part) => {
    const there = await db
      .selectFrom('reading_event')
      .select('id')
      .where('study_id', '=', studyId)
      .where(
        'id',
        'in',
        part.map(({ id }) => id),
      )
      .execute();
    for (const { id } of there) seen.add(id);
  });
  const fresh = events.filter(({ id }) => !seen.has(id) && seen.add(id));
  if (fresh.length === 0) return 0;
  const next = await nextPosition(db, 'reading_event', studyId);
  await insertEvents(db, studyId, fresh, next);
  return fresh.length;
};

const insertEvents = async (
  db: Kysely<Tables>,
  studyId: string,
  events: readonly ReadingEvent[],
  first: number,
): Promise<void> => {
  const rows = events.map((event, i) => ({
    study_id: studyId,
    id: event.id,
    position: first + i,
    card_code: event.cardCode,
    body: JSON.stringify(event),
  }));
  await inParts(rows, async (part) => {
    await db.insertInto('reading_event').values(part).execute();
  });
};

/**
 * Puts a study's events in this order, with those that are not there yet. What stands behind the first that is out of
 * place is written anew, in the session's transaction. Throws where one that is there is missing: it would be lost.
 */
export const arrangeEvents = async (
  db: Kysely<Tables>,
  studyId: string,
  events: readonly ReadingEvent[],
): Promise<number> => {
  const there = await db
    .selectFrom('reading_event')
    .select(['id', 'position'])
    .where('study_id', '=', studyId)
    .orderBy('position')
    .execute();
  const wanted = new Set(events.map(({ id }) => id));
  const missing = there.find(({ id }) => !wanted.has(id));
  if (missing !== undefined) throw new Error(`event ${missing.id} would be lost`);
  const outOfPlace = there.findIndex(({ id }, i) => events[i]?.id !== id);
  const inPlace = outOfPlace < 0 ? there.length : outOfPlace;
  const firstOut = there[inPlace];
  if (firstOut !== undefined) {
    await db
      .deleteFrom('reading_event')
      .where('study_id', '=', studyId)
      .where('position', '>=', firstOut.position)
      .execute();
  }
  await insertEvents(db, studyId, events.slice(inPlace), (there[inPlace - 1]?.position ?? 0) + 1);
  return events.length - there.length;
};

/** Adds tallies behind those that are there; known ids are passed over. */
export const insertTallies = async (
  db: Kysely<Tables>,
  studyId: string | undefined,
  tallies: readonly RecordedTally[],
): Promise<void> => {
  if (tallies.length === 0) return;
  const next = await nextPosition(db, 'tally');
  const rows = tallies.map((tally, i) => ({
    ...tallyColumns(tally),
    position: next + i,
    study_id: studyId ?? null,
  }));
  await inParts(rows, async (part) => {
    await db
      .insertInto('tally')
      .values(part)
      .onConflict((conflict) => conflict.column('id').doNothing())
      .execute();
  });
};

/** Adds an order behind those of the study that are there, or puts it in the place of what is there under its id. */
export const keepOrder = async (
  db: Kysely<Tables>,
  studyId: string,
  order: StartedOrder,
): Promise<void> => {
  const next = await nextPosition(db, 'started_order', studyId);
  const said = { body: JSON.stringify(order), ...orderFoundBy(order) };
  await db
    .insertInto('started_order')
    .values({ id: order.id, study_id: studyId, position: next, ...said })
    .onConflict((conflict) => conflict.column('id').doUpdateSet(said))
    .execute();
};
