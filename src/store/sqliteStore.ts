import { existsSync, mkdirSync } from 'node:fs';
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
import type { Store } from '../app/ports.ts';
import { kyselyStore } from './kyselyStore.ts';
import { migrate } from './migrate.ts';
import type { Migration } from './migrations/migration.ts';
import { explainSqlite } from './explainSqlite.ts';
import type { Tables } from './tables.ts';

export interface SqliteOptions {
  readonly file: string;
  /** ISO 8601, UTC: noted beside each migration that runs now. */
  readonly openedAt: string;
  /** Only tests say otherwise. */
  readonly migrations?: readonly Migration[];
  /** How long to wait for another program that is writing. */
  readonly busyMs?: number;
}

/**
 * Opens the embedded store, making the folder and the file where there are none, and brings its schema up to date.
 * A kept change is on the disk before `change` resolves (WAL with a full sync at every commit).
 * Throws `StoreError`: newer than this program, not readable, not writable, not ours.
 */
export const openSqliteStore = async (options: SqliteOptions): Promise<Store> => {
  const { file } = options;
  const explain = (thrown: unknown): unknown => explainSqlite(thrown, file);
  try {
    const db = new Kysely<Tables>({
      dialect: new ImmediateDialect({ database: openFile(options) }),
    });
    try {
      await migrate(db, options.openedAt, options.migrations);
    } catch (thrown) {
      await db.destroy();
      throw thrown;
    }
    return kyselyStore({ db, explain });
  } catch (thrown) {
    throw explain(thrown);
  }
};

const openFile = ({ file, busyMs = 5000 }: SqliteOptions): Database.Database => {
  if (!existsSync(dirname(file))) mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  const database = new Database(file, { timeout: busyMs });
  database.pragma('journal_mode = WAL');
  database.pragma('synchronous = FULL');
  database.pragma('foreign_keys = ON');
  return database;
};

/**
 * Takes the write lock when a changing session begins, not at its first write: two programs that both read before they
 * write then wait for one another, instead of one failing halfway.
 */
class ImmediateDriver extends SqliteDriver {
  override async beginTransaction(
    connection: DatabaseConnection,
    settings?: TransactionSettings,
  ): Promise<void> {
    const begin = settings?.accessMode === 'read only' ? 'begin' : 'begin immediate';
    await connection.executeQuery(CompiledQuery.raw(begin));
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
