import { problemOf } from '../core/problem.ts';
import { existsSync } from 'node:fs';
import Database from 'better-sqlite3';
import { explainSqlite } from './explainSqlite.ts';
import { putCopy } from './putCopy.ts';
import { StoreError } from './storeError.ts';
import { writableOrCopy } from './writableOrCopy.ts';

/**
 * Writes a whole copy of the store beside whatever is at work in it; the copy is complete the moment it appears, and
 * readable by its owner alone. Works in a folder that is read-only too. Throws `StoreError`: nothing there, not ours;
 * `HostError`: the copy cannot be written.
 */
export const backupSqlite = async (file: string, to: string): Promise<void> => {
  if (!existsSync(file)) throw new StoreError(problemOf('store-not-there', { file }));
  const source = openToRead(file);
  try {
    await putCopy({ file, to }, async (half) => {
      await source.db.backup(half);
    });
  } finally {
    source.close();
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
