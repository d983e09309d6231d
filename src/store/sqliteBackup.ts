import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { explainSqlite } from './explainSqlite.ts';
import { migrations } from './migrations/all.ts';
import { StoreError } from './storeError.ts';

/**
 * Writes a whole copy of the store beside whatever is at work in it; the copy is complete the moment it appears. Throws
 * `StoreError`: nothing there, not ours, not writable.
 */
export const backupSqlite = async (file: string, to: string): Promise<void> => {
  if (!existsSync(file)) throw new StoreError('store-not-there', { file });
  const half = `${to}.part`;
  const source = attempt(file, () => new Database(file, { readonly: true }));
  try {
    attempt(to, () => {
      mkdirSync(dirname(to), { recursive: true });
      sweepUp(half);
    });
    await source.backup(half).catch((thrown: unknown) => {
      throw explainSqlite(thrown, to);
    });
    checkOurs(half);
    attempt(to, () => {
      renameSync(half, to);
    });
  } finally {
    source.close();
    sweepUp(half);
  }
};

/**
 * Puts a backup in the store's place and keeps what was there aside. Gives the name of what was put aside, if there was
 * anything. Throws `StoreError`: the backup is not ours or newer than this program, or someone is at work in the store.
 */
export const restoreSqlite = (file: string, from: string, at: string): string | undefined => {
  if (!existsSync(from)) throw new StoreError('store-not-there', { file: from });
  const half = `${file}.part`;
  attempt(file, () => {
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    copyFileSync(from, half);
    // A backup of ours is one file; one copied by hand may have its last changes beside it.
    if (existsSync(`${from}-wal`)) copyFileSync(`${from}-wal`, `${half}-wal`);
  });
  try {
    checkOurs(half, from);
    const aside = existsSync(file) ? asideName(file, at) : undefined;
    if (aside !== undefined) {
      settle(file);
      renameSync(file, aside);
    }
    renameSync(half, file);
    return aside;
  } finally {
    sweepUp(half);
  }
};

const sweepUp = (half: string): void => {
  for (const left of [half, `${half}-wal`, `${half}-shm`]) if (existsSync(left)) rmSync(left);
};

const asideName = (file: string, at: string): string => {
  const base = `${file}.before-restore-${at.replace(/[^0-9]/g, '').slice(0, 14)}`;
  let name = base;
  for (let n = 2; existsSync(name); n += 1) name = `${base}-${String(n)}`;
  return name;
};

/** Puts all of a store into its one file. That needs it alone: fails while another program has it open. */
const settle = (file: string): void => {
  const db = attempt(file, () => new Database(file, { timeout: 0 }));
  try {
    const mode: unknown = attempt(file, () => db.pragma('journal_mode = delete', { simple: true }));
    if (mode !== 'delete') throw new StoreError('store-busy', { file });
  } finally {
    db.close();
  }
};

/** Opens a file, takes in what lies beside it and looks it over. Names it as the person knows it. */
const checkOurs = (file: string, named = file): void => {
  const known = Math.max(...migrations.map(({ number }) => number));
  attempt(named, () => {
    const db = new Database(file);
    try {
      db.pragma('journal_mode = delete');
      const found: unknown = db.prepare('select max(number) from schema_step').pluck().get();
      if (typeof found !== 'number') throw new StoreError('store-not-ours', { file: named });
      if (found > known) throw new StoreError('store-newer-than-program', { found, known });
      if (db.pragma('integrity_check', { simple: true }) !== 'ok')
        throw new StoreError('store-not-ours', { file: named });
    } finally {
      db.close();
    }
  });
};

const attempt = <T>(file: string, work: () => T): T => {
  try {
    return work();
  } catch (thrown) {
    const isForeign = thrown instanceof Error && /no such table/.test(thrown.message);
    throw isForeign
      ? new StoreError('store-not-ours', { file }, thrown)
      : explainSqlite(thrown, file);
  }
};
