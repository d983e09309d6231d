import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { problemOf } from '../core/problem.ts';
import type { StorePlace } from '../host/storePlace.ts';
import type { RowCounts } from './countRows.ts';
import { copyStore, replaceStore } from './moveStore.ts';
import { putCopy } from './putCopy.ts';
import { copyBackup } from './restoreSqlite.ts';
import { StoreError } from './storeError.ts';

/**
 * Writes a whole copy of a database's workshop into one file, as a data file's backup is, beside whatever is at work in it:
 * all as it was at one moment. Gives how many rows of each table it took. Throws `StoreError`; `HostError` where the copy cannot be written.
 */
export const backupDatabase = async (
  from: StorePlace,
  { to, at }: { readonly to: string; readonly at: string },
): Promise<RowCounts> => {
  let copied: Awaited<ReturnType<typeof copyStore>> = [];
  await putCopy({ file: to, to }, async (half) => {
    copied = await copyStore({ from, to: { kind: 'file', file: half }, at });
  });
  return Object.fromEntries(copied.map(({ table, rows }) => [table, rows]));
};

export interface Restored {
  readonly restored: string;
  /** A file with what was there. */
  readonly putAside?: string;
}

/**
 * Puts a backup in the place of what a database's workshop holds, in one step; whoever is at work there is told. What was
 * there is written to a file first. Throws `StoreError`: no backup, not ours, newer than this program, and what the server says.
 */
export const restoreDatabase = async (
  to: StorePlace,
  { from, asideIn, at }: { readonly from: string; readonly asideIn: string; readonly at: string },
): Promise<Restored> => {
  if (!existsSync(from)) throw new StoreError(problemOf('store-not-there', { file: from }));
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-restore-'));
  try {
    const file = join(folder, 'backup.sqlite');
    copyBackup(from, file);
    const aside = join(asideIn, `before-restore-${at.replace(/[^0-9]/g, '')}.sqlite`);
    const { place, putAside } = await replaceStore({ from: { kind: 'file', file }, to, at, aside });
    return { restored: place, ...(putAside ? { putAside: aside } : {}) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
