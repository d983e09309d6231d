import { problemOf } from '../core/problem.ts';
import { chmodSync } from 'node:fs';
import Database from 'better-sqlite3';
import { StoreError } from './storeError.ts';

/** Given back once. */
export interface Held {
  readonly release: () => void;
}

export interface LockOptions {
  /** All who are at work in a store share it; who puts another in its place has it alone. */
  readonly how: 'shared' | 'alone';
  /** How long to wait for others. */
  readonly waitMs: number;
}

/**
 * Holds the lock of a store's place. It is a file beside the store, and not the store itself, so that it works however
 * damaged the store is; the system gives it back when the program dies. Throws `StoreError`: `store-busy`, and what the
 * engine throws where the file cannot be made.
 */
export const holdStore = (file: string, { how, waitMs }: LockOptions): Held => {
  const db = new Database(`${file}.lock`, { timeout: waitMs });
  try {
    if (how === 'alone') db.exec('begin exclusive');
    else {
      db.exec('begin');
      db.prepare('select count(*) from sqlite_master').get();
    }
    chmodSync(`${file}.lock`, 0o600);
  } catch (thrown) {
    db.close();
    const code = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
    throw code.startsWith('SQLITE_BUSY')
      ? new StoreError(problemOf('store-busy', { file }), thrown)
      : thrown;
  }
  return { release: () => void db.close() };
};
