import { sql, type Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** Tables whose rows stand in an order of their own, those of a study apart where they have one. */
type Ordered =
  | 'card'
  | 'machine'
  | 'machine_test'
  | 'reading_event'
  | 'setting_change'
  | 'started_order'
  | 'tally';

/** Where the next row stands: behind all that are there, or behind those of one study. The first is 1. */
export const nextPosition = async (
  db: Kysely<Tables>,
  table: Ordered,
  studyId?: string,
): Promise<number> => {
  const those = studyId === undefined ? sql`` : sql` where study_id = ${studyId}`;
  const { rows } = await sql<{
    readonly next: number;
  }>`select coalesce(max(position), 0) + 1 as next from ${sql.table(table)}${those}`.execute(db);
  const [row] = rows;
  if (row === undefined) throw new Error(`${table} gave no row for its last position`);
  return row.next;
};
