import { problemOf } from '../core/problem.ts';
import { randomBytes } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { explainFile } from '../host/explainFile.ts';
import { HostError } from '../host/hostError.ts';
import { renameDurably, syncFile } from '../host/putFile.ts';
import { explainSqlite } from './explainSqlite.ts';
import { lookOver, sweepUp } from './restoreSqlite.ts';
import { StoreError } from './storeError.ts';
import { writableOrCopy } from './writableOrCopy.ts';

/**
 * Writes a whole copy of the store beside whatever is at work in it; the copy is complete the moment it appears, and
 * readable by its owner alone. Works in a folder that is read-only too. Throws `StoreError`: nothing there, not ours;
 * `HostError`: the copy cannot be written.
 */
export const backupSqlite = async (file: string, to: string): Promise<void> => {
  if (!existsSync(file)) throw new StoreError(problemOf('store-not-there', { file }));
  const half = `${to}.${randomBytes(4).toString('hex')}.part`;
  const source = openToRead(file);
  try {
    await writing({ file, to }, async () => {
      mkdirSync(dirname(to), { recursive: true });
      if (statSync(to, { throwIfNoEntry: false })?.isDirectory() === true)
        throw new HostError(problemOf('file-is-a-folder', { file: to }));
      await source.db.backup(half);
      chmodSync(half, 0o600);
    });
    lookOver(half, { named: file, code: 'store-not-ours' });
    await writing({ file, to }, () => {
      syncFile(half);
      renameDurably(half, to);
    });
  } finally {
    source.close();
    sweepUp(half);
  }
};

const openToRead = (
  file: string,
): { readonly db: Database.Database; readonly close: () => void } => {
  try {
    const place = writableOrCopy(file);
    try {
      const db = new Database(place.file, { readonly: place.isStore });
      return {
        db,
        close: () => {
          db.close();
          place.remove();
        },
      };
    } catch (thrown) {
      place.remove();
      throw thrown;
    }
  } catch (thrown) {
    throw explainSqlite(thrown, file);
  }
};

/** What stands against the copy is the copy's trouble, not the store's. */
const writing = async (
  { file, to }: { readonly file: string; readonly to: string },
  work: () => Promise<void> | void,
): Promise<void> => {
  try {
    await work();
  } catch (thrown) {
    if (thrown instanceof HostError || isOfSource(thrown)) throw explainSqlite(thrown, file);
    throw new HostError(explainFile(thrown, to, 'written'), thrown);
  }
};

const isOfSource = (thrown: unknown): boolean =>
  thrown instanceof Error &&
  'code' in thrown &&
  /^SQLITE_(NOTADB|CORRUPT|BUSY|LOCKED)/.test(String(thrown.code));
