import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { backupsToKeep, isBackupDue } from '../../core/backups/backupsToKeep.ts';
import { problemOf } from '../../core/problem.ts';
import { explainFile } from '../../host/explainFile.ts';
import { HostError } from '../../host/hostError.ts';
import { renameDurably } from '../../host/putFile.ts';
import type { StorePlace } from '../../host/storePlace.ts';
import { countRows, type RowCounts } from '../countRows.ts';
import { backupDatabase } from '../databaseBackup.ts';
import { openEngine, openStore } from '../openStore.ts';
import { restoreSqlite } from '../restoreSqlite.ts';
import { backupSqlite } from '../sqliteBackup.ts';
import { StoreError } from '../storeError.ts';
import { holdStore } from '../storeLock.ts';
import { backupFolder, type BackupFolder } from './backupFolder.ts';
import type { BackupPlan } from './backupPlan.ts';

/** What came of looking whether a backup is due. */
export interface BackupLook {
  /** `elsewhere`: another program is at it. */
  readonly what: 'not-due' | 'elsewhere' | 'taken';
  /** When the newest that is there was made. ISO 8601, UTC. */
  readonly lastAt?: string;
}

/** `whole`: how the copy is made; only tests say otherwise. */
export interface TakeOptions {
  readonly place: StorePlace;
  readonly plan: BackupPlan;
  /** ISO 8601, UTC. */
  readonly now: string;
  readonly whole?: (place: StorePlace, to: string, at: string) => Promise<RowCounts>;
}

/**
 * Makes a backup where one is due and nobody else is at it: a whole copy in one file, restored into a workshop that is made to
 * try it, opened there, its rows counted against those that were copied; only then it bears its name, and old ones that are not
 * to stay go. Whatever fails or is cut off leaves all earlier ones as they were. Throws `StoreError`, `HostError`.
 */
export const takeBackup = async (options: TakeOptions): Promise<BackupLook> => {
  const { place, plan, now } = options;
  const folder = backupFolder(plan.folder, place);
  const isDue = (): boolean => isBackupDue(folder.times(), { now, ...plan });
  if (!isDue()) return looked('not-due', folder, now);
  const held = await onlyHere(folder, place, async () => {
    folder.sweep();
    // Another program may have made one meanwhile.
    if (!isDue()) return looked('not-due', folder, now);
    await take(folder, options);
    const times = folder.times();
    const stay = new Set(backupsToKeep(times, { now, ...plan }));
    for (const at of times) if (!stay.has(at)) folder.remove(at);
    return looked('taken', folder, now);
  });
  return held ?? looked('elsewhere', folder, now);
};

const looked = (what: BackupLook['what'], folder: BackupFolder, now: string): BackupLook => {
  const lastAt = folder
    .times()
    .filter((at) => at <= now)
    .sort()
    .at(-1);
  return { what, ...(lastAt === undefined ? {} : { lastAt }) };
};

/**
 * One program at a time: by a lock in the folder, which the system gives back when the program dies, and by the database's own
 * where there is one, since a folder on another computer may lock nothing. Undefined: another has it.
 */
const onlyHere = async <T>(
  folder: BackupFolder,
  place: StorePlace,
  work: () => Promise<T>,
): Promise<T | undefined> => {
  let held;
  try {
    held = holdStore(folder.lock, { how: 'alone', waitMs: 0 });
  } catch (thrown) {
    if (thrown instanceof StoreError && thrown.problem.code === 'store-busy') return undefined;
    throw new HostError(explainFile(thrown, folder.lock, 'written'), thrown);
  }
  try {
    if (place.kind === 'file') return await work();
    const engine = await openEngine(place, { openedAt: new Date(0).toISOString() });
    try {
      return await (engine.onlyOne ?? ((alone) => alone()))(work);
    } catch (thrown) {
      throw engine.explain(thrown);
    } finally {
      await engine.close();
    }
  } finally {
    held.release();
  }
};

const wholeCopy = (place: StorePlace, to: string, at: string): Promise<RowCounts> =>
  place.kind === 'file' ? backupSqlite(place.file, to) : backupDatabase(place, { to, at });

const take = async (
  folder: BackupFolder,
  { place, now, whole = wholeCopy }: TakeOptions,
): Promise<void> => {
  const unchecked = folder.uncheckedOf(now);
  const tried = folder.triedIn(now);
  try {
    const copied = await whole(place, unchecked, now);
    try {
      mkdirSync(tried, { mode: 0o700 });
      const table = differing(copied, await restored(unchecked, join(tried, 'w.sqlite'), now));
      if (table !== undefined)
        throw new StoreError(problemOf('backup-differs', { file: folder.fileOf(now), table }));
      renameDurably(unchecked, folder.fileOf(now));
    } catch (thrown) {
      throw asFile(thrown, folder.fileOf(now));
    }
  } finally {
    folder.sweep();
  }
};

/** Restores a backup as anybody would, opens the workshop, and counts. */
const restored = async (backup: string, file: string, at: string): Promise<RowCounts> => {
  restoreSqlite(file, backup, at);
  await (await openStore({ kind: 'file', file }, at)).close();
  const db = new Database(file, { readonly: true });
  try {
    return countRows(db);
  } finally {
    db.close();
  }
};

/** A table that has other rows than were copied. What opening notes of itself counts for nothing. */
const differing = (copied: RowCounts, back: RowCounts): string | undefined =>
  Object.keys(copied).find((table) => table !== 'schema_step' && copied[table] !== back[table]);

/** Trouble with the file that is tried is the backup's, not the workshop's. */
const asFile = (thrown: unknown, file: string): unknown => {
  if (thrown instanceof StoreError && thrown.problem.code === 'store-disk-full')
    return new HostError(problemOf('file-disk-full', { file }), thrown);
  const hasWords = thrown instanceof Error && 'problem' in thrown;
  return hasWords ? thrown : new HostError(explainFile(thrown, file, 'written'), thrown);
};
