import type { Kysely } from 'kysely';
import type { ChangesAsked, Listed } from '../app/ports/ports.ts';
import type { ProvenSetting } from '../core/book/provenSetting.ts';
import {
  takenBackSince,
  type SettingChange,
  type SinceChange,
} from '../core/book/settingChange.ts';
import { changeOf, entryColumns, type ReadEach } from './rows.ts';
import { settingPhotosOf } from './settingPhotos.ts';
import type { SettingPhotoRow, Tables, TallyRow } from './tables.ts';
import { nextPosition } from './nextPosition.ts';

/** What goes with a setting that is taken out of the book, as it stood. */
interface Aside {
  readonly keptNo: number;
  readonly photos: readonly SettingPhotoRow[];
  readonly tallies: readonly TallyRow[];
}

/** Changes of kept settings, the last first. */
export const listChanges = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
  { settingId, limit }: ChangesAsked,
): Promise<Listed<SettingChange>> => {
  const all = db
    .selectFrom('setting_change')
    .$if(settingId !== undefined, (rows) => rows.where('setting_id', '=', settingId ?? ''));
  const { count } = await all
    .select(({ fn }) => fn.countAll<number | string>().as('count'))
    .executeTakeFirstOrThrow();
  const rows = await all.select(['id', 'body']).orderBy('position', 'desc').limit(limit).execute();
  return { found: readEach(rows, changeOf), total: Number(count) };
};

export const readChange = async (
  db: Kysely<Tables>,
  by: 'id' | 'undoes',
  id: string,
): Promise<SettingChange | undefined> => {
  const row = await db
    .selectFrom('setting_change')
    .select(['id', 'body'])
    .where(by, '=', id)
    .executeTakeFirst();
  return row === undefined ? undefined : changeOf(row);
};

/** What was made with a kept setting: orders counted, strips cut, photographs kept. */
export const builtOn = async (
  db: Kysely<Tables>,
  settingId: string,
): Promise<SinceChange['builtOn']> => {
  const counts = await db
    .selectFrom('tally')
    .select(({ fn }) => fn.countAll<number | string>().as('count'))
    .where('proven_setting_id', '=', settingId)
    .executeTakeFirstOrThrow();
  const strips = await db
    .selectFrom('study')
    .select(({ fn }) => fn.countAll<number | string>().as('count'))
    .where('strip_of', '=', settingId)
    .executeTakeFirstOrThrow();
  const photos = await settingPhotosOf(db, settingId);
  return {
    counts: Number(counts.count),
    strips: Number(strips.count),
    photos: photos.length,
  };
};

/**
 * Adds a change behind those that are there. Of one that takes a setting out it keeps what goes with it, so it is noted
 * before that; what others left aside is let go once they can be taken back no more.
 */
export const noteChange = async (db: Kysely<Tables>, change: SettingChange): Promise<void> => {
  const next = await nextPosition(db, 'setting_change');
  const setting = change.after ?? change.before;
  await db
    .insertInto('setting_change')
    .values({
      id: change.id,
      position: next,
      at: change.at,
      setting_id: change.settingId,
      undoes: change.undoes ?? null,
      is_example: setting?.isExample === true ? 1 : 0,
      body: JSON.stringify(change),
      aside: change.after === undefined ? await asideOf(db, change.settingId) : null,
    })
    .execute();
  await db
    .updateTable('setting_change')
    .set({ aside: null })
    .where('aside', 'is not', null)
    .where('at', '<', takenBackSince(change.at))
    .execute();
};

const asideOf = async (db: Kysely<Tables>, settingId: string): Promise<string | null> => {
  const kept = await db
    .selectFrom('proven_setting')
    .select('kept_no')
    .where('id', '=', settingId)
    .executeTakeFirst();
  if (kept === undefined) return null;
  const photos = await db
    .selectFrom('setting_photo')
    .selectAll()
    .where('setting_id', '=', settingId)
    .execute();
  const tallies = await db
    .selectFrom('tally')
    .selectAll()
    .where('proven_setting_id', '=', settingId)
    .orderBy('position')
    .execute();
  return JSON.stringify({ keptNo: kept.kept_no, photos, tallies } satisfies Aside);
};

/** Puts a setting back that a change took out: in its place in the book, with its photographs and its counts. */
export const putBackEntry = async (
  db: Kysely<Tables>,
  changeId: string,
  entry: ProvenSetting,
): Promise<void> => {
  const row = await db
    .selectFrom('setting_change')
    .select('aside')
    .where('id', '=', changeId)
    .executeTakeFirst();
  // This program wrote it.
  const aside = JSON.parse(row?.aside ?? 'null') as Aside | null;
  await db
    .insertInto('proven_setting')
    .values({ ...entryColumns(entry), kept_no: aside?.keptNo ?? 0 })
    .execute();
  for (const photo of aside?.photos ?? [])
    await db.insertInto('setting_photo').values(photo).execute();
  for (const tally of aside?.tallies ?? []) await takeBackTally(db, tally);
};

/** A count that stayed with its sheet is the setting's again; one that had no sheet went with the setting. */
const takeBackTally = async (db: Kysely<Tables>, tally: TallyRow): Promise<void> => {
  if (tally.study_id !== null) {
    await db
      .updateTable('tally')
      .set({ proven_setting_id: tally.proven_setting_id })
      .where('id', '=', tally.id)
      .where('proven_setting_id', 'is', null)
      .execute();
    return;
  }
  const next = await nextPosition(db, 'tally');
  await db
    .insertInto('tally')
    .values({ ...tally, position: next })
    .onConflict((conflict) => conflict.column('id').doNothing())
    .execute();
};
