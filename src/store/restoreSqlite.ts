import { problemOf } from '../core/problem.ts';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { renameDurably, syncFile } from '../host/putFile.ts';
import { checkOurs, type OursOptions } from './checkOurs.ts';
import { explainSqlite } from './explainSqlite.ts';
import { StoreError } from './storeError.ts';
import { holdStore } from './storeLock.ts';

/**
 * Puts a backup in the store's place. What was there is put aside unread, its log and the log's index with it: it may be
 * damaged, and a log that stayed behind would be played into the restored store. Gives the name of what was put aside, if
 * there was anything. Throws `StoreError`: the backup is not ours or newer than this program, or someone is at work in
 * the store.
 *
 * The backup is first copied beside the store, looked over and brought to the disk; then renamed to a name that says "to
 * be put in place". From that moment it is decided: who opens the store next finishes what a power cut left half done
 * (`finishRestore`), so that there is never no store.
 */
export const restoreSqlite = (file: string, from: string, at: string): string | undefined => {
  if (!existsSync(from)) throw new StoreError(problemOf('store-not-there', { file: from }));
  try {
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    const held = holdStore(file, { how: 'alone', waitMs: 0 });
    try {
      finish(file);
      const half = copyBeside(file, from);
      const ready = `${file}${readyMark}${freeEnd(file, at)}`;
      renameDurably(half, ready);
      return putInPlace(file, ready);
    } finally {
      sweepUp(`${file}.part`);
      held.release();
    }
  } catch (thrown) {
    throw explainSqlite(thrown, file);
  }
};

/** Finishes a restore that was cut off, where there is one. Throws `StoreError`: `store-busy`. */
export const finishRestore = (file: string, waitMs: number): void => {
  if (readyFiles(file).length === 0 && !existsSync(`${file}.part`)) return;
  const held = holdStore(file, { how: 'alone', waitMs });
  try {
    finish(file);
    sweepUp(`${file}.part`);
  } finally {
    held.release();
  }
};

/** Whether a restore waits to be finished. */
export const restoreIsPending = (file: string): boolean => readyFiles(file).length > 0;

const readyMark = '.ready-';
const companions = ['-wal', '-shm', '-journal', ''] as const;

const readyFiles = (file: string): readonly string[] => {
  if (!existsSync(dirname(file))) return [];
  const start = `${basename(file)}${readyMark}`;
  return readdirSync(dirname(file))
    .filter((name) => name.startsWith(start))
    .sort()
    .map((name) => join(dirname(file), name));
};

const finish = (file: string): void => {
  for (const ready of readyFiles(file)) putInPlace(file, ready);
};

/** Each rename is safe to be the last one before a power cut. */
const putInPlace = (file: string, ready: string): string | undefined => {
  const aside = `${file}${asideMark}${ready.slice(file.length + readyMark.length)}`;
  for (const end of companions)
    if (existsSync(`${file}${end}`)) renameSync(`${file}${end}`, `${aside}${end}`);
  renameDurably(ready, file);
  return existsSync(aside) ? aside : undefined;
};

const asideMark = '.before-restore-';

/** The time, and a number where something was put aside in the same second. */
const freeEnd = (file: string, at: string): string => {
  const base = at.replace(/[^0-9]/g, '').slice(0, 14);
  let end = base;
  const taken = (): boolean =>
    companions.some((companion) => existsSync(`${file}${asideMark}${end}${companion}`));
  for (let n = 2; taken(); n += 1) end = `${base}-${String(n)}`;
  return end;
};

/** A whole copy of the backup in one file, looked over and on the disk. */
const copyBeside = (file: string, from: string): string => {
  const half = `${file}.part`;
  sweepUp(half);
  copyBackup(from, half);
  syncFile(half);
  return half;
};

/** Copies a backup, readable by its owner alone, and looks it over. Throws `StoreError`: `backup-not-ours` and others. */
export const copyBackup = (from: string, to: string): void => {
  copyFileSync(from, to);
  chmodSync(to, 0o600);
  // A backup of ours is one file; one copied by hand may have its last changes beside it.
  if (existsSync(`${from}-wal`)) copyFileSync(`${from}-wal`, `${to}-wal`);
  lookOver(to, { named: from, code: 'backup-not-ours' });
};

/** Opens a copy, takes in what lies beside it and looks whether it is a whole store of ours. */
export const lookOver = (
  copy: string,
  { named, code }: { readonly named: string; readonly code: OursOptions['code'] },
): void => {
  const refuse = (cause?: unknown): never => {
    throw new StoreError(problemOf(code, { file: named }), cause);
  };
  try {
    const db = new Database(copy);
    try {
      db.pragma('journal_mode = delete');
      checkOurs(db, { file: named, code, emptyToo: false });
      if (db.pragma('integrity_check', { simple: true }) !== 'ok') refuse();
    } finally {
      db.close();
    }
  } catch (thrown) {
    const explained = explainSqlite(thrown, named);
    const isDamaged =
      explained instanceof StoreError && explained.problem.code === 'store-not-ours';
    throw isDamaged ? refuse(thrown) : explained;
  }
};

export const sweepUp = (half: string): void => {
  for (const end of companions)
    if (existsSync(`${half}${end}`)) rmSync(`${half}${end}`, { force: true });
};
