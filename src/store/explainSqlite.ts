import type { FileStoreCode } from '../core/problems/store.ts';
import { problemOf } from '../core/problem.ts';
import { existsSync, statfsSync } from 'node:fs';
import { dirname } from 'node:path';
import { mayWriteBeside } from '../host/mayWriteBeside.ts';
import { StoreError } from './storeError.ts';

/** What SQLite and the file system throw, in the codes that have words. Everything else is a bug and passes through. */
export const explainSqlite = (thrown: unknown, file: string): unknown => {
  const code = codeOf(thrown);
  if (code === undefined || carriesWords(thrown)) return thrown;
  const as = (known: FileStoreCode): StoreError =>
    new StoreError(problemOf(known, { file }), thrown);
  if (/^(SQLITE_FULL|ENOSPC|EDQUOT)/.test(code)) return as('store-disk-full');
  if (code === 'ENAMETOOLONG') return as('store-name-too-long');
  if (hasNoRoomEver(dirname(file))) return as('store-no-such-place');
  // A full disk shows itself in many ways: a log that cannot be opened, an index of it that cannot grow.
  if (/^SQLITE_(IOERR|CANTOPEN)/.test(code) && isFull(dirname(file))) return as('store-disk-full');
  if (/^SQLITE_(READONLY|IOERR_WRITE)/.test(code) || code === 'EROFS')
    return as('store-not-writable');
  if (/^SQLITE_(CANTOPEN|PERM|AUTH|IOERR)/.test(code) || fileErrors.includes(code))
    return as(
      existsSync(file) && !mayWriteBeside(file) ? 'store-not-writable' : 'store-not-readable',
    );
  if (/^SQLITE_(NOTADB|CORRUPT)/.test(code)) return as('store-not-ours');
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) return as('store-busy');
  return thrown;
};

const fileErrors = [
  'EACCES',
  'EPERM',
  'ENOENT',
  'ENOTDIR',
  'EISDIR',
  'EEXIST',
  'ENAMETOOLONG',
  'ELOOP',
  'EIO',
];

const codeOf = (thrown: unknown): string | undefined =>
  thrown instanceof Error && 'code' in thrown && typeof thrown.code === 'string'
    ? thrown.code
    : undefined;

const carriesWords = (thrown: unknown): boolean => thrown instanceof Error && 'problem' in thrown;

/** What the system only makes up, such as /proc: no block of a disk belongs to it. */
const hasNoRoomEver = (folder: string): boolean => {
  try {
    return statfsSync(nearestFolder(folder)).blocks === 0;
  } catch {
    return false;
  }
};

/** The folder itself, or the nearest above it that is there. */
const nearestFolder = (folder: string): string =>
  existsSync(folder) || dirname(folder) === folder ? folder : nearestFolder(dirname(folder));

/** Whether no more than a few pages are left. */
const isFull = (folder: string): boolean => {
  try {
    const { bavail, bsize } = statfsSync(folder);
    return bavail * bsize < 128 * 1024;
  } catch {
    return false;
  }
};
