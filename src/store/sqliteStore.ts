import { problemOf } from '../core/problem.ts';
import { chmodSync, closeSync, existsSync, mkdirSync, openSync, readSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import {
  CompiledQuery,
  Kysely,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type SqliteDialectConfig,
  type TransactionSettings,
} from 'kysely';
import type { Store } from '../app/ports/ports.ts';
import { checkOurs } from './checkOurs.ts';
import type { Engine } from './engine.ts';
import { kyselyStore } from './kyselyStore.ts';
import { migrate } from './migrate.ts';
import type { Migration } from './migrations/migration.ts';
import { dateAsItsLock, signOfEmptied } from './emptied.ts';
import { explainSqlite } from './explainSqlite.ts';
import { isCutOff } from './isCutOff.ts';
import { finishRestore, restoreIsPending } from './restoreSqlite.ts';
import { givingTurns } from './givingTurns.ts';
import { preparedOnce } from './preparedOnce.ts';
import { StoreError } from './storeError.ts';
import { holdStore, type Held, type LockOptions } from './storeLock.ts';
import type { Tables } from './tables.ts';
import { writableOrCopy } from './writableOrCopy.ts';

export interface SqliteOptions {
  readonly file: string;
  /** ISO 8601, UTC: noted beside each migration that runs now. */
  readonly openedAt: string;
  /** Only tests say otherwise. */
  readonly migrations?: readonly Migration[];
  /** How long to wait for another program that is writing. */
  readonly busyMs?: number;
  /** Nobody else may be at work in it meanwhile. */
  readonly alone?: boolean;
}

/**
 * Opens the embedded store, making the folder and the file where there are none, and brings its schema up to date. A
 * restore that a power cut left half done is finished first. A kept change is on the disk before `change` resolves (WAL
 * with a full sync at every commit). Throws `StoreError`: newer than this program, not readable, not writable, not ours,
 * busy, disk full.
 */
export const openSqliteStore = async (options: SqliteOptions): Promise<Store> =>
  kyselyStore(await openSqliteEngine(options));

/** The same for work on the rows themselves. */
export const openSqliteEngine = async (options: SqliteOptions): Promise<Engine> => {
  const { file, busyMs = 5000, alone = false } = options;
  const explain = (thrown: unknown): unknown => explainSqlite(thrown, file);
  const undo: (() => void)[] = [];
  try {
    makeFolder(dirname(file));
    const held = holdForWork(file, { how: alone ? 'alone' : 'shared', waitMs: busyMs });
    undo.push(held.release);
    const statements = preparedOnce(openFile(options));
    const db = new Kysely<Tables>({ dialect: new ImmediateDialect({ database: statements }) });
    undo.push(() => void db.destroy());
    await migrate(db, options.openedAt, { migrations: options.migrations });
    statements.keep();
    const stillThere = watcherOf(file);
    return {
      db,
      place: file,
      explain,
      beside: (work) => readBeside(file, { busyMs, stillThere }, work),
      stillThere,
      close: async () => {
        await db.destroy();
        held.release();
      },
    };
  } catch (thrown) {
    for (const step of undo.toReversed()) step();
    throw explain(thrown);
  }
};

/** Never a file that has taken the place of the one that was opened. */
const readBeside = async <T>(
  file: string,
  { busyMs, stillThere }: { readonly busyMs: number; readonly stillThere: () => void },
  work: (db: Kysely<Tables>) => Promise<T>,
): Promise<T> => {
  stillThere();
  const statements = preparedOnce(new Database(file, { timeout: busyMs, readonly: true }));
  statements.keep();
  const db = new Kysely<Tables>({ dialect: new ImmediateDialect({ database: statements }) });
  try {
    return await work(db);
  } finally {
    await db.destroy();
  }
};

/**
 * Opens it to be read only: where its folder may not be written, a copy of it elsewhere, which goes when it is closed.
 * Throws as `openSqliteStore` does.
 */
export const openSqliteToRead = async (options: SqliteOptions): Promise<Store> => {
  try {
    if (existsSync(options.file)) refuseEmptied(options.file);
    const place = writableOrCopy(options.file);
    try {
      const store = await openSqliteStore({ ...options, file: place.file });
      return {
        ...store,
        close: async () => {
          await store.close();
          place.remove();
        },
      };
    } catch (thrown) {
      place.remove();
      throw thrown;
    }
  } catch (thrown) {
    throw explainSqlite(thrown, options.file);
  }
};

/** Takes the place, mostly with all others who work in it, once no restore waits to be finished. */
const holdForWork = (file: string, how: LockOptions): Held => {
  finishRestore(file, how.waitMs);
  const held = holdStore(file, how);
  // Another program may have decided one while this one waited.
  if (!restoreIsPending(file)) return held;
  held.release();
  return holdForWork(file, how);
};

const openFile = ({ file, busyMs = 5000, migrations }: SqliteOptions): Database.Database => {
  const check = (db: Database.Database): void =>
    checkOurs(db, {
      file,
      code: 'store-not-ours',
      emptyToo: true,
      ...(migrations === undefined ? {} : { migrations }),
    });
  makeFile(file);
  // The engine carries a log that lies beside a file into it and removes the log, even where the file is none of its own.
  if (!beginsLikeOne(file) || isCutOff(file))
    throw new StoreError(problemOf('store-not-ours', { file }));
  refuseEmptied(file);
  const isLooked = lookFirst(file, busyMs, check);
  const database = new Database(file, { timeout: busyMs });
  try {
    if (!isLooked) check(database);
    keepPrivate(file);
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.pragma('foreign_keys = ON');
    return database;
  } catch (thrown) {
    database.close();
    throw thrown;
  }
};

/**
 * Looks at it by a connection that only reads: when it is closed again, a log stays where it is. Not where a first start was cut
 * off within a change: that has to be undone first.
 */
const lookFirst = (
  file: string,
  timeout: number,
  check: (db: Database.Database) => void,
): boolean => {
  if (existsSync(`${file}-journal`)) return false;
  const database = new Database(file, { timeout, readonly: true });
  try {
    check(database);
  } finally {
    database.close();
  }
  return true;
};

/** An empty file is begun anew, but not where a workshop was kept in it. */
const refuseEmptied = (file: string): void => {
  const sign = signOfEmptied(file);
  if (sign !== undefined) throw new StoreError(problemOf('store-emptied', { file, sign }));
};

/** "The SQLite Database File Format", sqlite.org/fileformat2.html, 1.3. */
const magic = 'SQLite format 3\0';

/** Whether a file is empty, or begins as every database does. */
const beginsLikeOne = (file: string): boolean => {
  const opened = openSync(file, 'r');
  try {
    const head = Buffer.alloc(magic.length);
    const read = readSync(opened, head, 0, head.length, 0);
    return read === 0 || head.toString('latin1') === magic;
  } finally {
    closeSync(opened);
  }
};

/** Step by step: made in one go, a folder below one that takes none, such as /proc, is tried for ever. */
const makeFolder = (folder: string): void => {
  if (existsSync(folder)) return;
  if (dirname(folder) !== folder) makeFolder(dirname(folder));
  try {
    mkdirSync(folder, { mode: 0o700 });
  } catch (thrown) {
    // Another program may have been as quick.
    if (!existsSync(folder)) throw thrown;
  }
};

/** Its log gets the same rights from the engine. */
const makeFile = (file: string): void => {
  if (existsSync(file)) return;
  try {
    closeSync(openSync(file, 'wx', 0o600));
    dateAsItsLock(file);
  } catch (thrown) {
    const code = thrown instanceof Error && 'code' in thrown ? thrown.code : undefined;
    if (code !== 'EEXIST') throw thrown;
  }
};

/** Who else may read it is no business of other users of this computer. Whose file it is not cannot change that. */
const keepPrivate = (file: string): void => {
  if (process.platform === 'win32' || (statSync(file).mode & 0o077) === 0) return;
  try {
    chmodSync(file, 0o600);
  } catch {
    // It is read all the same.
  }
};

/**
 * Looks whether the file that was opened is still the one that bears its name: the engine goes on writing into a file
 * that was deleted, or whose disk was taken out. Throws `store-gone`.
 */
const watcherOf = (file: string): (() => void) => {
  const opened = statSync(file);
  return () => {
    const now = statSync(file, { throwIfNoEntry: false });
    if (now?.ino !== opened.ino || now.dev !== opened.dev || !existsSync(`${file}-wal`))
      throw new StoreError(problemOf('store-gone', { file }));
  };
};

/**
 * Takes the write lock when a changing session begins, not at its first write: two programs that both read before they
 * write then wait for one another, instead of one failing halfway.
 */
class ImmediateDriver extends SqliteDriver {
  override async acquireConnection(): Promise<DatabaseConnection> {
    return givingTurns(await super.acquireConnection());
  }

  override async beginTransaction(
    connection: DatabaseConnection,
    settings?: TransactionSettings,
  ): Promise<void> {
    const begin = settings?.accessMode === 'read only' ? 'begin' : 'begin immediate';
    await connection.executeQuery(CompiledQuery.raw(begin));
  }

  /** The engine undoes a transaction by itself where a disk is full or breaks: what it said then must not be hidden. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    try {
      await super.rollbackTransaction(connection);
    } catch (thrown) {
      if (!(thrown instanceof Error && thrown.message.includes('no transaction is active')))
        throw thrown;
    }
  }
}

class ImmediateDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig;

  constructor(config: SqliteDialectConfig) {
    super(config);
    this.#config = config;
  }

  override createDriver(): SqliteDriver {
    return new ImmediateDriver(this.#config);
  }
}
