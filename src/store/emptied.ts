import { existsSync, readdirSync, statSync, utimesSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';

/**
 * What shows that an empty data file was more than that once: a log with changes, something put aside by a restore; or that the file is
 * younger than its lock, which is made first and never written to. undefined: it is as a first start that was cut off leaves it.
 */
export const signOfEmptied = (file: string): string | undefined => {
  if (sizeOf(file) !== 0) return undefined;
  if ((sizeOf(`${file}-wal`) ?? 0) > 0) return `${file}-wal`;
  const aside = `${basename(file)}.before-restore-`;
  const put = readdirSync(dirname(file)).find((name) => name.startsWith(aside));
  if (put !== undefined) return join(dirname(file), put);
  const lock = lockOf(file);
  return existsSync(lock) && statSync(file).mtimeMs - statSync(lock).mtimeMs > apartMs
    ? lock
    : undefined;
};

/** A file that is made now bears the time of its lock, however old that is, so that it is not taken for one that was emptied. */
export const dateAsItsLock = (file: string): void => {
  const lock = lockOf(file);
  if (!existsSync(lock)) return;
  const { atime, mtime } = statSync(lock);
  utimesSync(file, atime, mtime);
};

const lockOf = (file: string): string => `${file}.lock`;

/** Some file systems keep times to two seconds only, and a first start may wait for the disk. */
const apartMs = 60_000;

const sizeOf = (file: string): number | undefined =>
  statSync(file, { throwIfNoEntry: false })?.size;
