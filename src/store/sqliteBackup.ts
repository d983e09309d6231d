import { problemOf } from '../core/problem.ts';
import { existsSync } from 'node:fs';
import Database from 'better-sqlite3';
import { countRows, type RowCounts } from './countRows.ts';
import { explainSqlite } from './explainSqlite.ts';
import { putCopy } from './putCopy.ts';
import { StoreError } from './storeError.ts';
import { writableOrCopy } from './writableOrCopy.ts';

/**
 * Writes a whole copy of the store beside whatever is at work in it; the copy is complete the moment it appears, and
 * readable by its owner alone. Works in a folder that is read-only too. Gives how many rows of each table it took. Throws
 * `StoreError`: nothing there, not ours; `HostError`: the copy cannot be written.
 */
export const backupSqlite = async (file: string, to: string): Promise<RowCounts> => {
  if (!existsSync(file)) throw new StoreError(problemOf('store-not-there', { file }));
  const source = openToRead(file);
  try {
    let counts: RowCounts = {};
    await putCopy({ file, to }, async (half) => {
      // All of one moment: within a transaction the engine copies what that one sees.
      source.db.exec('begin');
      try {
        counts = countRows(source.db);
        await source.db.backup(half);
      } finally {
        if (source.db.inTransaction) source.db.exec('rollback');
      }
    });
    return counts;
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
