import type { Kysely } from 'kysely';
import type { ReadSession } from '../app/ports.ts';
import { machineTestRows } from './machineTests.ts';
import {
  bedTestOf,
  cardOf,
  entryOf,
  eventOf,
  focusTestOf,
  meteringOf,
  studyOf,
  tallyOf,
} from './rows.ts';
import { readSummaries } from './summaries.ts';
import type { Tables } from './tables.ts';

/** The questions that a session answers, asked inside its transaction. */
export const readSession = (db: Kysely<Tables>): ReadSession => ({
  summaries: () => readSummaries(db),
  study: async (id) => {
    const row = await db.selectFrom('study').selectAll().where('id', '=', id).executeTakeFirst();
    if (row === undefined) return undefined;
    const cards = await bodiesOfCards(db, id);
    const events = await bodiesOfEvents(db, id);
    const tallies = await tallyRows(db).where('study_id', '=', id).execute();
    return studyOf(row, {
      cards: cards.map(cardOf),
      events: events.map(eventOf),
      tallies: tallies.map(tallyOf),
    });
  },
  codeTaken: async (code) => {
    const card = await db
      .selectFrom('card')
      .select('code')
      .where('code', '=', code)
      .limit(1)
      .execute();
    if (card.length > 0) return true;
    const entry = await entryRows(db).where('code', '=', code).limit(1).execute();
    return entry.length > 0;
  },
  entries: async () => (await entryRows(db).execute()).map(entryOf),
  entry: async (idOrCode) => {
    const byId = await entryRows(db).where('id', '=', idOrCode).executeTakeFirst();
    const row =
      byId ?? (await entryRows(db).where('code', '=', idOrCode).limit(1).executeTakeFirst());
    return row === undefined ? undefined : entryOf(row);
  },
  tally: async (id) => {
    const row = await tallyRows(db).where('id', '=', id).executeTakeFirst();
    if (row === undefined) return undefined;
    return { tally: tallyOf(row), ...(row.study_id === null ? {} : { studyId: row.study_id }) };
  },
  talliesOfEntry: async (entryId) =>
    (await tallyRows(db).where('proven_setting_id', '=', entryId).execute()).map(tallyOf),
  looseTallies: async () =>
    (await tallyRows(db).where('study_id', 'is', null).execute()).map(tallyOf),
  meterings: async () => (await machineTestRows(db, 'metering').execute()).map(meteringOf),
  metering: async (id) => {
    const row = await machineTestRows(db, 'metering').where('id', '=', id).executeTakeFirst();
    return row === undefined ? undefined : meteringOf(row);
  },
  focusTests: async () => (await machineTestRows(db, 'focus').execute()).map(focusTestOf),
  focusTest: async (id) => {
    const row = await machineTestRows(db, 'focus').where('id', '=', id).executeTakeFirst();
    return row === undefined ? undefined : focusTestOf(row);
  },
  bedTests: async () => (await machineTestRows(db, 'bed').execute()).map(bedTestOf),
  bedTest: async (id) => {
    const row = await machineTestRows(db, 'bed').where('id', '=', id).executeTakeFirst();
    return row === undefined ? undefined : bedTestOf(row);
  },
});

const bodiesOfCards = (db: Kysely<Tables>, studyId: string) =>
  db
    .selectFrom('card')
    .select(['code', 'body'])
    .where('study_id', '=', studyId)
    .orderBy('position')
    .execute();

const bodiesOfEvents = (db: Kysely<Tables>, studyId: string) =>
  db
    .selectFrom('reading_event')
    .select(['id', 'body'])
    .where('study_id', '=', studyId)
    .orderBy('position')
    .execute();

const tallyRows = (db: Kysely<Tables>) =>
  db
    .selectFrom('tally')
    .select(['id', 'study_id', 'proven_setting_id', 'body'])
    .orderBy('position');

/** The last kept first. */
const entryRows = (db: Kysely<Tables>) =>
  db.selectFrom('proven_setting').select(['id', 'body']).orderBy('kept_at', 'desc').orderBy('id');
