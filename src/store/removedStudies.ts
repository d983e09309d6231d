import type { Kysely } from 'kysely';
import type { RemovedStudy } from '../app/ports/ports.ts';
import { sweepPhotos } from './photos.ts';
import { removedStudyOf, type ReadEach } from './rows.ts';
import type { Tables } from './tables.ts';

/** So many can come back. */
const mostKept = 20;

const newestFirst = (db: Kysely<Tables>) =>
  db.selectFrom('removed_study').selectAll().orderBy('removed_at', 'desc').orderBy('id');

/** Studies that were removed, the last first. */
export const removedStudies = async (
  db: Kysely<Tables>,
  readEach: ReadEach,
): Promise<readonly RemovedStudy[]> => readEach(await newestFirst(db).execute(), removedStudyOf);

/** Keeps one more, in the place of the oldest where there are many. */
export const keepRemoved = async (
  db: Kysely<Tables>,
  { study, removedAt }: RemovedStudy,
): Promise<void> => {
  await forgetRemoved(db, study.id);
  await db
    .insertInto('removed_study')
    .values({
      id: study.id,
      is_example: study.isExample ? 1 : 0,
      removed_at: removedAt,
      body: JSON.stringify(study),
    })
    .execute();
  const old = (await newestFirst(db).execute()).slice(mostKept);
  for (const { id } of old) await forgetRemoved(db, id);
};

export const forgetRemoved = async (db: Kysely<Tables>, id: string): Promise<void> => {
  await db.deleteFrom('removed_study').where('id', '=', id).execute();
  await sweepPhotos(db);
};
