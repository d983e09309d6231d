import {
  closeSync,
  fsyncSync,
  lstatSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { randomBytes } from 'node:crypto';
import { dirname } from 'node:path';

/** A file that is about to be put somewhere. */
export interface FileToPut {
  readonly file: string;
  readonly content: string | Uint8Array;
}

/**
 * Puts files in their places, each whole: all are written beside their places and brought to the disk, then renamed. Who
 * reads sees the old file or the new one, whenever the power fails; a second name of the old file (a hard link) keeps the
 * old content. What is no plain file, such as /dev/stdout, is written straight. Throws what the file system throws; no
 * half file is left behind then.
 */
export const putFiles = (
  files: readonly FileToPut[],
  { mode = 0o666 }: { readonly mode?: number } = {},
): void => {
  const halves: (readonly [half: string, place: string])[] = [];
  try {
    for (const { file, content } of files) {
      const place = placeOf(file);
      if (place === undefined) {
        writeFileSync(file, content);
        continue;
      }
      const half = `${place}.${randomBytes(4).toString('hex')}.part`;
      halves.push([half, place]);
      writeFileSync(half, content, { flag: 'wx', mode, flush: true });
    }
    for (const [half, place] of halves) renameDurably(half, place);
  } catch (thrown) {
    for (const [half] of halves) rmSync(half, { force: true });
    throw thrown;
  }
};

/** Renames, and returns once the disk knows it. */
export const renameDurably = (from: string, to: string): void => {
  renameSync(from, to);
  syncFolder(dirname(to));
};

/** Brings a file's content to the disk. */
export const syncFile = (file: string): void => {
  const handle = openSync(file, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};

/** Where a link leads to; undefined where there is something that cannot be replaced by renaming. */
const placeOf = (file: string): string | undefined => {
  const there = lstatSync(file, { throwIfNoEntry: false });
  if (there === undefined) return file;
  const place = there.isSymbolicLink() ? realpathSync(file) : file;
  return lstatSync(place).isFile() || lstatSync(place).isDirectory() ? place : undefined;
};

/** Some systems cannot sync a folder; their renames are as durable as they can be. */
const syncFolder = (folder: string): void => {
  try {
    const handle = openSync(folder, 'r');
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch (thrown) {
    const code = thrown instanceof Error && 'code' in thrown ? thrown.code : undefined;
    if (code !== 'EISDIR' && code !== 'EPERM' && code !== 'EINVAL') throw thrown;
  }
};
