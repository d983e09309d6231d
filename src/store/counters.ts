import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** The number of the next touch of any study. O(1), by an index. */
export const nextTouch = async (db: Kysely<Tables>): Promise<number> => {
  const last = await db
    .selectFrom('study')
    .select(({ fn }) => fn.max('touched_no').as('no'))
    .executeTakeFirst();
  return (last?.no ?? 0) + 1;
};

/** The number of the next sheet that is put on the bed. */
export const nextOnBed = async (db: Kysely<Tables>): Promise<number> => {
  const last = await db
    .selectFrom('study')
    .select(({ fn }) => fn.max('on_bed_no').as('no'))
    .executeTakeFirst();
  return (last?.no ?? 0) + 1;
};

/** The number of the next setting that is kept. O(1), by an index. */
export const nextKept = async (db: Kysely<Tables>): Promise<number> => {
  const last = await db
    .selectFrom('proven_setting')
    .select(({ fn }) => fn.max('kept_no').as('no'))
    .executeTakeFirst();
  return (last?.no ?? 0) + 1;
};
