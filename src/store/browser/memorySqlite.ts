import openSqlite, {
  type Database,
  type PreparedStatement,
  type Sqlite3Static,
} from '@sqlite.org/sqlite-wasm';
import type { SqliteDatabase } from 'kysely';
import type { LoggedStatement } from './changeLog.ts';

/** A database in memory that can tell what was written to it. */
export interface MemorySqlite extends SqliteDatabase {
  /** What was written since the last time that it was asked, or since `forget`. */
  readonly written: () => readonly LoggedStatement[];
  readonly forget: () => void;
  /** Writes it again; it is not told as written. */
  readonly replay: (statements: readonly LoggedStatement[]) => void;
  /** All of it, as a database file. */
  readonly bytes: () => Uint8Array;
  /** Puts what a database file holds in the place of what is there; an empty database where there is none. */
  readonly become: (bytes: Uint8Array | undefined) => void;
}

/** So many statements are kept prepared: the program has fewer, but for lists whose length is in the statement. */
const mostKept = 200;

/** Opens one: SQLite itself, compiled for browsers, in this thread. */
export const openMemorySqlite = async (): Promise<MemorySqlite> => {
  const sqlite = await openSqlite();
  let database = emptyDatabase(sqlite, undefined);
  let written: LoggedStatement[] = [];
  const prepared = new Map<string, PreparedStatement>();

  const letGo = (): void => {
    for (const statement of prepared.values()) statement.finalize();
    prepared.clear();
  };
  const preparedOnce = (text: string): PreparedStatement => {
    const before = prepared.get(text);
    if (before !== undefined) return before;
    if (prepared.size >= mostKept) letGo();
    const statement = database.prepare(text);
    prepared.set(text, statement);
    return statement;
  };
  /** Runs it to its end. */
  const run = (text: string, values: readonly unknown[]): readonly unknown[] => {
    const statement = preparedOnce(text);
    try {
      if (values.length > 0) statement.bind(values.map(asBound));
      const rows: unknown[] = [];
      while (statement.step()) rows.push(statement.get({}));
      if (sqlite.capi.sqlite3_stmt_readonly(statement) === 0) written.push({ text, values });
      return rows;
    } finally {
      statement.reset(true);
    }
  };
  return {
    prepare: (text) => ({
      reader: preparedOnce(text).columnCount > 0,
      all: (values) => [...run(text, values)],
      run: (values) => {
        run(text, values);
        return {
          changes: database.changes(),
          lastInsertRowid: sqlite.capi.sqlite3_last_insert_rowid(database),
        };
      },
      iterate: (values) => run(text, values)[Symbol.iterator]() as IterableIterator<unknown>,
    }),
    close: () => {
      letGo();
      database.close();
    },
    written: () => {
      const told = written;
      written = [];
      return told;
    },
    forget: () => {
      written = [];
    },
    replay: (statements) => {
      const before = written;
      for (const { text, values } of statements) run(text, values);
      written = before;
    },
    bytes: () => sqlite.capi.sqlite3_js_db_export(database),
    become: (bytes) => {
      letGo();
      database.close();
      database = emptyDatabase(sqlite, bytes);
    },
  };
};

/** What the engine takes: a truth value is a number to it, as in the store's files. */
const asBound = (value: unknown) => value as string | number | bigint | null | Uint8Array;

const emptyDatabase = (sqlite: Sqlite3Static, bytes: Uint8Array | undefined): Database => {
  const database = new sqlite.oo1.DB(':memory:');
  if (bytes !== undefined) {
    const { capi, wasm } = sqlite;
    const at = wasm.allocFromTypedArray(bytes);
    const flags = capi.SQLITE_DESERIALIZE_FREEONCLOSE | capi.SQLITE_DESERIALIZE_RESIZEABLE;
    database.checkRc(
      capi.sqlite3_deserialize(database, 'main', at, bytes.byteLength, bytes.byteLength, flags),
    );
  }
  database.exec('pragma foreign_keys = on');
  return database;
};
