import { realpathSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { done, refused, type Outcome } from '../core/problem.ts';
import { dataFile, dataFolder } from './dataFolder.ts';
import { HostError } from './hostError.ts';

/** What lies beside the data file and belongs to it. */
const companions = ['', '-wal', '-shm', '-journal', '.lock', '.part'] as const;

/**
 * Keeps what is written off the data file and what belongs to it, by whatever name it is called. Refuses:
 * `file-is-the-store`.
 */
export const keepsOff = (file: string, store = ownStore()): Outcome<string> => {
  if (store === undefined) return done(file);
  const target = realPlace(file);
  const own = realPlace(store);
  const isOwn =
    companions.some((end) => target === `${own}${end}` || sameThing(file, `${own}${end}`)) ||
    target.startsWith(`${own}.ready-`);
  return isOwn ? refused('file-is-the-store', { file }) : done(file);
};

/** Who has no home has no store in it that could be overwritten. */
const ownStore = (): string | undefined => {
  try {
    return dataFile(dataFolder());
  } catch (thrown) {
    if (thrown instanceof HostError) return undefined;
    throw thrown;
  }
};

/** The same place on the disk under two names, links and other spellings included. */
const sameThing = (one: string, other: string): boolean => {
  const [a, b] = [one, other].map(identity);
  return a !== undefined && a === b;
};

const identity = (file: string): string | undefined => {
  try {
    const { dev, ino } = statSync(file);
    return `${String(dev)} ${String(ino)}`;
  } catch {
    // Not there, or a name that cannot be: nothing that could be overwritten.
    return undefined;
  }
};

/** Where a file is or would be, links in the way followed as far as they lead. */
const realPlace = (file: string): string => {
  try {
    return realpathSync(file);
  } catch {
    const folder = dirname(file);
    return folder === file ? file : join(realPlace(folder), basename(file));
  }
};
