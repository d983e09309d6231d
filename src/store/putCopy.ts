import { randomBytes } from 'node:crypto';
import { chmodSync, existsSync, mkdirSync, rmSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { problemOf } from '../core/problem.ts';
import { explainFile } from '../host/explainFile.ts';
import { HostError } from '../host/hostError.ts';
import { renameDurably, syncFile } from '../host/putFile.ts';
import { explainSqlite } from './explainSqlite.ts';
import { lookOver, sweepUp } from './restoreSqlite.ts';
import { StoreError } from './storeError.ts';

/**
 * Has a copy of a store made beside its place and puts it there once it is whole and on the disk, readable by its owner
 * alone. Throws `StoreError`: what is copied is not ours; `HostError`: the copy cannot be written.
 */
export const putCopy = async (
  { file, to }: { readonly file: string; readonly to: string },
  make: (half: string) => Promise<void>,
): Promise<void> => {
  const half = `${to}.${randomBytes(4).toString('hex')}.part`;
  try {
    await writing({ file, to }, async () => {
      mkdirSync(dirname(to), { recursive: true });
      if (statSync(to, { throwIfNoEntry: false })?.isDirectory() === true)
        throw new HostError(problemOf('file-is-a-folder', { file: to }));
      await make(half);
      chmodSync(half, 0o600);
    });
    lookOver(half, { named: file, code: 'store-not-ours' });
    await writing({ file, to }, () => {
      syncFile(half);
      renameDurably(half, to);
    });
  } finally {
    sweepUp(half);
    if (existsSync(`${half}.lock`)) rmSync(`${half}.lock`, { force: true });
  }
};

/** What stands against the copy is the copy's trouble, not the store's. */
const writing = async (
  { file, to }: { readonly file: string; readonly to: string },
  work: () => Promise<void> | void,
): Promise<void> => {
  try {
    await work();
  } catch (thrown) {
    if (thrown instanceof HostError || isOfSource(thrown)) throw explainSqlite(thrown, file);
    throw new HostError(explainFile(thrown, to, 'written'), thrown);
  }
};

const isOfSource = (thrown: unknown): boolean =>
  thrown instanceof StoreError ||
  (thrown instanceof Error &&
    'code' in thrown &&
    /^SQLITE_(NOTADB|CORRUPT|BUSY|LOCKED)/.test(String(thrown.code)));
