import { photoSides } from '../core/photo/photoSide.ts';
import { problemOf } from '../core/problem.ts';
import type { Kysely } from 'kysely';
import type { Session } from '../app/ports/ports.ts';
import { appendEvents, arrangeEvents, insertCards, insertTallies, keepOrder } from './inserts.ts';
import { deleteMachineTest, insertMachineTest } from './machineTests.ts';
import { cardFoundBy, entryFoundBy } from './foundBy.ts';
import { nextKept, nextOnBed, nextTouch } from './counters.ts';
import { replaceMachine } from './machines.ts';
import { deletePhoto, keepPhoto, sweepPhotos } from './photos.ts';
import { readSession } from './readSession.ts';
import { forgetRemoved, keepRemoved } from './removedStudies.ts';
import { entryColumns, headColumns, machineColumns, tallyColumns } from './rows.ts';
import { noteChange, putBackEntry } from './settingChanges.ts';
import { deleteSettingPhoto, keepSettingPhoto } from './settingPhotos.ts';
import { StoreError } from './storeError.ts';
import type { Tables } from './tables.ts';
import { nextPosition } from './nextPosition.ts';

/** A session that may change things, inside its transaction. */
export const changeSession = (db: Kysely<Tables>): Omit<Session, 'announce'> => ({
  ...readSession(db),

  insertMachine: async (machine) => {
    const next = await nextPosition(db, 'machine');
    await db
      .insertInto('machine')
      .values({ ...machineColumns(machine), position: next })
      .execute();
  },
  replaceMachine: (machine) => replaceMachine(db, machine),
  deleteMachine: async (id) => {
    await db.deleteFrom('machine').where('id', '=', id).execute();
  },

  insertStudy: async (study, touchedAt) => {
    await db
      .insertInto('study')
      .values({
        id: study.id,
        is_example: study.isExample ? 1 : 0,
        created_at: study.createdAt,
        touched_at: touchedAt,
        revision: 1,
        touched_no: await nextTouch(db),
        on_bed_at: study.stripOf === undefined ? touchedAt : null,
        on_bed_no: study.stripOf === undefined ? await nextOnBed(db) : null,
        strip_of: study.stripOf ?? null,
        ...headColumns(study),
      })
      .execute();
    await insertCards(db, study.id, study.cards);
    await appendEvents(db, study.id, study.events);
    for (const order of study.orders ?? []) await keepOrder(db, study.id, order);
    await insertTallies(db, study.id, study.tallies);
  },
  replaceHead: async (studyId, head) => {
    await db.updateTable('study').set(headColumns(head)).where('id', '=', studyId).execute();
  },
  deleteStudy: async (studyId) => {
    await db
      .deleteFrom('tally')
      .where('study_id', '=', studyId)
      .where('proven_setting_id', 'is', null)
      .execute();
    await db.deleteFrom('study').where('id', '=', studyId).execute();
    await sweepPhotos(db);
  },
  touch: async (studyId, at) => {
    const touched = await nextTouch(db);
    const row = await db
      .updateTable('study')
      .set((eb) => ({ touched_at: at, touched_no: touched, revision: eb('revision', '+', 1) }))
      .where('id', '=', studyId)
      .returning('revision')
      .executeTakeFirst();
    if (row === undefined)
      throw new StoreError(problemOf('store-row-unreadable', { table: 'study', id: studyId }));
    return row.revision;
  },

  putOnBed: async (studyId, at) => {
    await db
      .updateTable('study')
      .set({ on_bed_at: at, on_bed_no: await nextOnBed(db) })
      .where('id', '=', studyId)
      .execute();
  },
  keepRemoved: (removed) => keepRemoved(db, removed),
  forgetRemoved: (studyId) => forgetRemoved(db, studyId),
  takeBackTallies: async (studyId, ids) => {
    if (ids.length === 0) return;
    await db
      .updateTable('tally')
      .set({ study_id: studyId })
      .where('study_id', 'is', null)
      .where('id', 'in', ids)
      .execute();
  },

  insertCard: (studyId, card) => insertCards(db, studyId, [card]),
  replaceCard: async (studyId, card) => {
    await db
      .updateTable('card')
      .set({ ...cardFoundBy(card), body: JSON.stringify(card) })
      .where('study_id', '=', studyId)
      .where('code', '=', card.code)
      .execute();
  },
  keepPhoto: (card, photo) => keepPhoto(db, card, photo),
  deletePhoto: (card, side) => deletePhoto(db, card, side),
  keepSettingPhoto: (entryId, photo) => keepSettingPhoto(db, entryId, photo),
  deleteSettingPhoto: (entryId, subject) => deleteSettingPhoto(db, entryId, subject),
  deleteCard: async (studyId, code) => {
    for (const side of photoSides) await deletePhoto(db, { studyId, code }, side);
    await db.deleteFrom('card').where('study_id', '=', studyId).where('code', '=', code).execute();
  },
  appendEvents: (studyId, events) => appendEvents(db, studyId, events),
  arrangeEvents: (studyId, events) => arrangeEvents(db, studyId, events),

  keepOrder: (studyId, order) => keepOrder(db, studyId, order),
  deleteOrder: async (id) => {
    await db.deleteFrom('started_order').where('id', '=', id).execute();
  },

  insertTally: (studyId, tally) => insertTallies(db, studyId, [tally]),
  replaceTally: async (tally) => {
    await db.updateTable('tally').set(tallyColumns(tally)).where('id', '=', tally.id).execute();
  },
  deleteTally: async (id) => {
    await db.deleteFrom('tally').where('id', '=', id).execute();
  },

  insertEntry: async (entry) => {
    await db
      .insertInto('proven_setting')
      .values({ ...entryColumns(entry), kept_no: await nextKept(db) })
      .execute();
  },
  replaceEntry: async (entry) => {
    await db
      .updateTable('proven_setting')
      .set({ ...entryFoundBy(entry), body: JSON.stringify(entry) })
      .where('id', '=', entry.id)
      .execute();
  },
  deleteEntry: async (id) => {
    await db
      .deleteFrom('tally')
      .where('proven_setting_id', '=', id)
      .where('study_id', 'is', null)
      .execute();
    await db.deleteFrom('proven_setting').where('id', '=', id).execute();
  },

  noteChange: (change) => noteChange(db, change),
  putBackEntry: (changeId, entry) => putBackEntry(db, changeId, entry),

  insertMachineTest: (name, test) => insertMachineTest(db, name, test),
  deleteMachineTest: (name, id) => deleteMachineTest(db, name, id),

  deleteExample: async () => {
    const studies = db.selectFrom('study').select('id').where('is_example', '=', 1);
    const entries = db.selectFrom('proven_setting').select('id').where('is_example', '=', 1);
    await db.deleteFrom('tally').where('study_id', 'in', studies).execute();
    await db.deleteFrom('tally').where('proven_setting_id', 'in', entries).execute();
    await db.deleteFrom('proven_setting').where('is_example', '=', 1).execute();
    await db.deleteFrom('setting_change').where('is_example', '=', 1).execute();
    await db.deleteFrom('study').where('is_example', '=', 1).execute();
    await db.deleteFrom('removed_study').where('is_example', '=', 1).execute();
    await db.deleteFrom('machine_test').where('is_example', '=', 1).execute();
    await db.deleteFrom('machine').where('is_example', '=', 1).execute();
    await sweepPhotos(db);
  },
});
