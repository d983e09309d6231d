import type Database from 'better-sqlite3';

/** How many rows each table has. */
export type RowCounts = Readonly<Record<string, number>>;

/** Of all tables of a data file. */
export const countRows = (db: Database.Database): RowCounts => {
  const tables = db
    .prepare(
      `select name from sqlite_master where type = 'table' and name not like 'sqlite!_%' escape '!'`,
    )
    .pluck()
    .all() as readonly string[];
  return Object.fromEntries(
    tables.map((table) => [
      table,
      db.prepare(`select count(*) from "${table}"`).pluck().get() as number,
    ]),
  );
};
