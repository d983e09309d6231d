import type { Kysely } from 'kysely';
import type { ReadSession } from '../app/ports/ports.ts';
import type { StoredStudy } from '../app/ports/stored.ts';
import { undescribedMachine } from '../core/machine/machine.ts';
import type { ProblemOf } from '../core/problem.ts';
import { entriesOfKind, entriesOnlyByAir, entryRows, listEntries } from './entries.ts';
import { machineTestRows } from './machineTests.ts';
import { machineUse, readMachine, readMachines } from './machines.ts';
import {
  cardOf,
  entryOf,
  eventOf,
  machineOf,
  machineTestOf,
  orderOf,
  readingEach,
  studyOf,
  tallyOf,
  type ReadEach,
} from './rows.ts';
import { photoOf, photosOf } from './photos.ts';
import { builtOn, listChanges, readChange } from './settingChanges.ts';
import { settingPhotoOf, settingPhotosOf } from './settingPhotos.ts';
import { removedStudies } from './removedStudies.ts';
import { listSheets, readOnBed, readSheet, readSummaries, sheetsOfKind } from './summaries.ts';
import type { Tables } from './tables.ts';

/** The questions that a session answers, asked inside its transaction. */
export const readSession = (db: Kysely<Tables>): ReadSession => {
  const passedOver: ProblemOf<'store-row-unreadable'>[] = [];
  const readEach = readingEach((problem) => passedOver.push(problem));
  return {
    passedOver: () => passedOver,
    ...studyQuestions(db, readEach),
    ...otherQuestions(db, readEach),
  };
};

type StudyQuestion =
  | 'summaries'
  | 'listSheets'
  | 'sheet'
  | 'sheetsOfKind'
  | 'onBed'
  | 'removedStudies'
  | 'holds'
  | 'study'
  | 'studyAsReadable'
  | 'cardsOf'
  | 'photosOf'
  | 'photo'
  | 'settingPhotosOf'
  | 'settingPhoto'
  | 'lastTallyOf'
  | 'keptFrom';

const studyQuestions = (
  db: Kysely<Tables>,
  readEach: ReadEach,
): Pick<ReadSession, StudyQuestion> => ({
  summaries: () => readSummaries(db, readEach),
  listSheets: (asked) => listSheets(db, readEach, asked),
  sheet: (id) => readSheet(db, readEach, id),
  sheetsOfKind: (kind) => sheetsOfKind(db, kind),
  onBed: () => readOnBed(db, readEach),
  removedStudies: () => removedStudies(db, readEach),
  photosOf: (card) => photosOf(db, card),
  photo: (card, side) => photoOf(db, card, side),
  settingPhotosOf: (entryId) => settingPhotosOf(db, entryId),
  settingPhoto: (entryId, subject) => settingPhotoOf(db, entryId, subject),
  holds: async () => {
    const isThere = async (table: 'study' | 'proven_setting', example: 0 | 1): Promise<boolean> => {
      const found = await db
        .selectFrom(table)
        .select('id')
        .where('is_example', '=', example)
        .limit(1)
        .execute();
      return found.length > 0;
    };
    return {
      own: (await isThere('study', 0)) || (await isThere('proven_setting', 0)),
      example: (await isThere('study', 1)) || (await isThere('proven_setting', 1)),
    };
  },
  study: (id) => wholeStudy(db, id, (rows, read) => rows.map(read)),
  studyAsReadable: (id) => wholeStudy(db, id, readEach),
  cardsOf: async (id) => {
    const row = await db
      .selectFrom('study')
      .select('revision')
      .where('id', '=', id)
      .executeTakeFirst();
    if (row === undefined) return undefined;
    return { cards: (await bodiesOfCards(db, id)).map(cardOf), revision: row.revision };
  },
  lastTallyOf: async (id) => {
    const rows = await db
      .selectFrom('tally')
      .select(['id', 'proven_setting_id', 'body'])
      .where('study_id', '=', id)
      .orderBy('position', 'desc')
      .limit(1)
      .execute();
    return readEach(rows, tallyOf)[0];
  },
  keptFrom: async (id) =>
    readEach(
      await entryRows(db).where('proven_setting.study_id', '=', id).limit(1).execute(),
      entryOf,
    )[0],
});

const wholeStudy = async (
  db: Kysely<Tables>,
  id: string,
  readEach: ReadEach,
): Promise<StoredStudy | undefined> => {
  const row = await db.selectFrom('study').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) return undefined;
  const machines = await db
    .selectFrom('machine')
    .selectAll()
    .where('id', '=', row.machine_id)
    .execute();
  const cards = await bodiesOfCards(db, id);
  const events = await bodiesOfEvents(db, id);
  const tallies = await tallyRows(db).where('study_id', '=', id).execute();
  const orders = readEach(await bodiesOfOrders(db, id), orderOf);
  const parts = {
    cards: readEach(cards, cardOf),
    events: readEach(events, eventOf),
    tallies: readEach(tallies, tallyOf),
    ...(orders.length === 0 ? {} : { orders }),
  };
  return readEach([row], () =>
    studyOf(row, readEach(machines, machineOf)[0] ?? undescribed, parts),
  )[0];
};

/** In the place of a machine that cannot be read. */
const undescribed = { machine: undescribedMachine, changes: [] };

const otherQuestions = (
  db: Kysely<Tables>,
  readEach: ReadEach,
): Omit<ReadSession, StudyQuestion | 'passedOver'> => ({
  machines: () => readMachines(db, readEach),
  machine: (id) => readMachine(db, id),
  machineUse: (id) => machineUse(db, id),
  codeTaken: async (code) => {
    const card = await db
      .selectFrom('card')
      .select('code')
      .where('code', '=', code)
      .limit(1)
      .execute();
    if (card.length > 0) return true;
    const entry = await entryRows(db).where('proven_setting.code', '=', code).limit(1).execute();
    return entry.length > 0;
  },
  entries: async () => readEach(await entryRows(db).execute(), entryOf),
  listEntries: (asked) => listEntries(db, readEach, asked),
  entriesOfKind: (kind) => entriesOfKind(db, readEach, kind),
  entriesOnlyByAir: (entry) => entriesOnlyByAir(db, readEach, entry),
  entry: async (idOrCode) => {
    const byId = await entryRows(db).where('proven_setting.id', '=', idOrCode).executeTakeFirst();
    const row =
      byId ??
      (await entryRows(db).where('proven_setting.code', '=', idOrCode).limit(1).executeTakeFirst());
    return row === undefined ? undefined : entryOf(row);
  },
  settingChanges: (asked) => listChanges(db, readEach, asked),
  settingChange: (id) => readChange(db, 'id', id),
  undoOfChange: (id) => readChange(db, 'undoes', id),
  builtOnEntry: (id) => builtOn(db, id),
  studyOfOrder: async (orderId) => {
    const row = await db
      .selectFrom('started_order')
      .select('study_id')
      .where('id', '=', orderId)
      .executeTakeFirst();
    return row?.study_id;
  },
  tally: async (id) => {
    const row = await tallyRows(db).where('id', '=', id).executeTakeFirst();
    if (row === undefined) return undefined;
    return { tally: tallyOf(row), ...(row.study_id === null ? {} : { studyId: row.study_id }) };
  },
  talliesOfEntry: async (entryId) =>
    readEach(await tallyRows(db).where('proven_setting_id', '=', entryId).execute(), tallyOf),
  looseTallies: async () =>
    readEach(await tallyRows(db).where('study_id', 'is', null).execute(), tallyOf),
  machineTests: async (name) =>
    readEach(await machineTestRows(db, name).execute(), (row) => machineTestOf(name, row)),
  machineTest: async (name, id) => {
    const row = await machineTestRows(db, name)
      .where('machine_test.id', '=', id)
      .executeTakeFirst();
    return row === undefined ? undefined : machineTestOf(name, row);
  },
});

const bodiesOfCards = (db: Kysely<Tables>, studyId: string) =>
  db
    .selectFrom('card')
    .select(['code', 'body'])
    .where('study_id', '=', studyId)
    .orderBy('position')
    .execute();

const bodiesOfOrders = (db: Kysely<Tables>, studyId: string) =>
  db
    .selectFrom('started_order')
    .select(['id', 'body'])
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
