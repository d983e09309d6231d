import {
  CompiledQuery,
  Kysely,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type SqliteDialectConfig,
} from 'kysely';
import type { Store } from '../../app/ports/ports.ts';
import type { StoredChange } from '../../app/ports/storedChange.ts';
import { problemOf } from '../../core/problem.ts';
import { kyselyStore } from '../kyselyStore.ts';
import { migrate } from '../migrate.ts';
import { migrations as allMigrations } from '../migrations/all.ts';
import type { Migration } from '../migrations/migration.ts';
import { StoreError } from '../storeError.ts';
import type { Tables } from '../tables.ts';
import { openChangeLog, type ChangeLog } from './changeLog.ts';
import { explainBrowser } from './explainBrowser.ts';
import { openMemorySqlite, type MemorySqlite } from './memorySqlite.ts';

export interface BrowserOptions {
  /** What it is called among all that this browser keeps for the page's address. */
  readonly name: string;
  /** ISO 8601, UTC: noted beside each migration that runs now. */
  readonly openedAt: string;
  readonly newId: () => string;
  /** Only tests say otherwise. */
  readonly migrations?: readonly Migration[];
  /** After so many changes they are folded in one. */
  readonly foldAfter?: number;
}

/**
 * Opens the store that a browser keeps: SQLite in memory, and every change written to the browser's own database before it is
 * acknowledged. Several pages may work on it at once: each learns what the others have kept before a session begins, and a
 * session that another one came before is done anew. Throws `StoreError`: newer than this page, full, gone, not to be had.
 */
export const openBrowserStore = async (options: BrowserOptions): Promise<Store> => {
  const { name, openedAt, newId, migrations = allMigrations, foldAfter = 300 } = options;
  try {
    const log = await openChangeLog(name, newId);
    const memory = await openMemorySqlite();
    const known = Math.max(0, ...migrations.map(({ number }) => number));
    const news = openNews(name);
    const keeper: Keeper = { log, memory, foldAfter, known, kept: news.flush, undone: news.drop };
    const db = new Kysely<Tables>({ dialect: new LoggedDialect({ database: memory }, keeper) });
    await again(() => migrate(db, openedAt, { migrations }));
    const store = kyselyStore({
      db,
      place: name,
      explain: (thrown) => (thrown instanceof KeptByAnother ? thrown : explainBrowser(thrown)),
      news,
      stillThere: () => undefined,
      close: async () => {
        await db.destroy();
        news.close();
        log.close();
      },
    });
    return { ...store, change: (work) => again(() => store.change(work)) };
  } catch (thrown) {
    throw explainBrowser(thrown);
  }
};

/** Another page kept a change while this session was at work: it has to see that first. */
class KeptByAnother extends Error {}

const again = async <T>(work: () => Promise<T>): Promise<T> => {
  for (;;) {
    try {
      return await work();
    } catch (thrown) {
      if (!(thrown instanceof KeptByAnother)) throw thrown;
    }
  }
};

interface Keeper {
  readonly log: ChangeLog;
  readonly memory: MemorySqlite;
  readonly foldAfter: number;
  /** The newest migration that this build knows. */
  readonly known: number;
  readonly kept: () => void;
  readonly undone: () => void;
}

/** Learns what other pages have kept before a session begins, and keeps what it wrote before it ends. */
class LoggedDriver extends SqliteDriver {
  readonly #keeper: Keeper;
  #through = 0;
  #folded = 0;
  #newer: StoreError | undefined;

  constructor(config: SqliteDialectConfig, keeper: Keeper) {
    super(config);
    this.#keeper = keeper;
  }

  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await this.#learn();
    await connection.executeQuery(CompiledQuery.raw('begin'));
    this.#keeper.memory.forget();
  }

  override async commitTransaction(connection: DatabaseConnection): Promise<void> {
    const { memory, log, kept } = this.#keeper;
    const written = memory.written();
    if (written.length > 0) {
      if (!(await log.add(this.#through + 1, written))) throw new KeptByAnother();
      this.#through += 1;
    }
    await connection.executeQuery(CompiledQuery.raw('commit'));
    if (written.length > 0) kept();
    await this.#fold();
  }

  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    this.#keeper.undone();
    await super.rollbackTransaction(connection);
    this.#keeper.memory.forget();
  }

  async #learn(): Promise<void> {
    const { log, memory, known } = this.#keeper;
    if (this.#newer !== undefined) throw this.#newer;
    const { snapshot, changes } = await log.since(this.#through);
    if (snapshot !== undefined) {
      memory.become(snapshot.bytes);
      this.#through = snapshot.through;
      this.#folded = snapshot.through;
    }
    for (const change of changes) {
      memory.replay([beginIt, ...change, commitIt]);
      this.#through += 1;
    }
    if (snapshot === undefined && changes.length === 0) return;
    this.#newer = newerThan(memory, known);
    if (this.#newer !== undefined) throw this.#newer;
  }

  /** What was kept is kept, whether this succeeds or not: the next session tries again. */
  async #fold(): Promise<void> {
    const { log, memory, foldAfter } = this.#keeper;
    if (this.#through - this.#folded < foldAfter) return;
    try {
      await log.fold({ through: this.#through, bytes: memory.bytes() });
      this.#folded = this.#through;
    } catch {
      // No room for it, or the log is gone: the next session says so, if it must.
    }
  }
}

const beginIt = { text: 'begin', values: [] } as const;
const commitIt = { text: 'commit', values: [] } as const;

/** A page of a newer build may have been at work. */
const newerThan = (memory: MemorySqlite, known: number): StoreError | undefined => {
  const [row] = memory.prepare('select max(number) as newest from schema_step').all([]);
  const found = Number((row as { readonly newest: number | null }).newest);
  return found > known
    ? new StoreError(problemOf('store-newer-than-program', { found, known }))
    : undefined;
};

class LoggedDialect extends SqliteDialect {
  readonly #config: SqliteDialectConfig;
  readonly #keeper: Keeper;

  constructor(config: SqliteDialectConfig, keeper: Keeper) {
    super(config);
    this.#config = config;
    this.#keeper = keeper;
  }

  override createDriver(): SqliteDriver {
    return new LoggedDriver(this.#config, this.#keeper);
  }
}

/** How pages at work in one store hear of one another. What a session announces is told when it is kept. */
const openNews = (name: string) => {
  const channel = new BroadcastChannel(`throughcut-store ${name}`);
  const listeners = new Set<(change: StoredChange) => void>();
  let waiting: readonly StoredChange[] = [];
  channel.onmessage = ({ data }: MessageEvent<readonly StoredChange[]>) => {
    for (const change of data) for (const heard of listeners) heard(change);
  };
  return {
    announce: (_: unknown, changes: readonly StoredChange[]): Promise<void> => {
      waiting = [...waiting, ...changes];
      return Promise.resolve();
    },
    hear: (heard: (change: StoredChange) => void) => {
      listeners.add(heard);
      return () => void listeners.delete(heard);
    },
    flush: () => {
      if (waiting.length > 0) channel.postMessage(waiting);
      waiting = [];
    },
    drop: () => {
      waiting = [];
    },
    close: () => channel.close(),
  };
};
