import { problemOf } from '../core/problem.ts';
import Database from 'better-sqlite3';
import { migrations as allMigrations } from './migrations/all.ts';
import type { Migration } from './migrations/migration.ts';
import { StoreError } from './storeError.ts';

export interface OursOptions {
  /** As the person knows it. */
  readonly file: string;
  readonly code: 'store-not-ours' | 'backup-not-ours';
  /** Whether a file with nothing in it will do: it becomes a store. */
  readonly emptyToo: boolean;
  readonly migrations?: readonly Migration[];
}

/**
 * Looks whether a database is a store of ours, without changing it: the steps that it notes are our steps, and what they
 * make is there. A table that happens to bear one of our names is not enough. Throws `StoreError`: the code that was
 * asked for, `store-newer-than-program`.
 */
export const checkOurs = (
  db: Database.Database,
  { file, code, emptyToo, migrations = allMigrations }: OursOptions,
): void => {
  const foreign = (): never => {
    throw new StoreError(problemOf(code, { file }));
  };
  const tables = columnsByTable(db);
  if (tables.size === 0) {
    if (!emptyToo) foreign();
    return;
  }
  if (!hasAll(tables.get('schema_step'), ['number', 'name', 'applied_at'])) foreign();
  const done = db.prepare('select number, name from schema_step').all() as readonly Step[];
  const nameOf = new Map(migrations.map(({ number, name }) => [number, name]));
  if (done.length === 0 || done.some(({ number, name }) => (nameOf.get(number) ?? name) !== name))
    foreign();
  const known = Math.max(...nameOf.keys());
  const found = Math.max(...done.map(({ number }) => number));
  if (found > known) throw new StoreError(problemOf('store-newer-than-program', { found, known }));
  const ran = new Set(done.map(({ number }) => number));
  for (const [table, columns] of madeBy(migrations.filter(({ number }) => ran.has(number))))
    if (!hasAll(tables.get(table), columns)) foreign();
};

interface Step {
  readonly number: number;
  readonly name: string;
}

type Tables = ReadonlyMap<string, readonly string[]>;

const columnsByTable = (db: Database.Database): Tables => {
  const names = db
    .prepare(
      `select name from sqlite_master where type = 'table' and name not like 'sqlite!_%' escape '!'`,
    )
    .pluck()
    .all() as readonly string[];
  const columnsOf = db.prepare('select name from pragma_table_info(?)').pluck();
  return new Map(names.map((name) => [name, columnsOf.all(name) as readonly string[]]));
};

/** The tables that our steps make, read off an empty database in memory. */
const madeBy = (migrations: readonly Migration[]): Tables => {
  const db = new Database(':memory:');
  try {
    for (const { statements, after = [] } of migrations)
      for (const statement of [...statements, ...after]) db.exec(statement);
    return columnsByTable(db);
  } finally {
    db.close();
  }
};

const hasAll = (there: readonly string[] | undefined, wanted: readonly string[]): boolean =>
  there !== undefined && wanted.every((name) => there.includes(name));
