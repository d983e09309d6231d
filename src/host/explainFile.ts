import { dirname } from 'node:path';
import { problemOf } from '../core/problem.ts';
import type { FileProblem } from './hostError.ts';

/** What stood against reading or writing a file, as a problem that has words. */
export const explainFile = (
  thrown: unknown,
  file: string,
  act: 'read' | 'written',
): FileProblem => {
  const code = thrown instanceof Error && 'code' in thrown ? thrown.code : undefined;
  const as = (known: NamesFile): FileProblem => problemOf(known, { file });
  if (thrown instanceof RangeError) return as('file-too-big-to-read');
  switch (code) {
    case 'ENAMETOOLONG':
      return as('file-name-too-long');
    case 'EISDIR':
      return as('file-is-a-folder');
    case 'ENOSPC':
    case 'EDQUOT':
    case 'SQLITE_FULL':
      return as('file-disk-full');
    case 'ERR_FS_FILE_TOO_LARGE':
    case 'ERR_STRING_TOO_LONG':
      return as('file-too-big-to-read');
    // No folder; or a file lies where one should be (or be made).
    case 'ENOENT':
    case 'ENOTDIR':
    case 'EEXIST':
      return act === 'read'
        ? as('file-not-found')
        : problemOf('file-folder-not-there', { file, folder: dirname(file) });
  }
  const detail = thrown instanceof Error ? thrown.message : 'no reason given';
  return problemOf(act === 'read' ? 'file-not-readable' : 'file-not-written', { file, detail });
};

/** What is said of a file by its name alone. */
type NamesFile =
  | 'file-too-big-to-read'
  | 'file-name-too-long'
  | 'file-is-a-folder'
  | 'file-disk-full'
  | 'file-not-found';
