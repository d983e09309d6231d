import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Problem } from '../../core/problem.ts';
import type { BackupLook, TakeOptions } from './takeBackup.ts';

/** What a thread says at its end. */
export type BackupReply =
  { readonly look: BackupLook } | { readonly problem: Problem } | { readonly stack: string };

/** A thread runs what is built, also where this was loaded as it was written. */
const entry = new URL(
  extname(import.meta.url) === '.ts'
    ? '../../../build/src/store/backups/backupThread.js'
    : './backupThread.js',
  import.meta.url,
);

/** The store's trouble as the thread told it. */
class ToldProblem extends Error {
  readonly problem: Problem;

  constructor(problem: Problem) {
    super(problem.code);
    this.problem = problem;
  }
}

/**
 * As `takeBackup`, in a thread of its own: a large workshop is copied, looked over and restored without anybody waiting for it.
 * Where `until` says so it ends in the midst of it; the next one sweeps up.
 */
export const takeBackupInThread = (
  options: Omit<TakeOptions, 'whole'>,
  until: AbortSignal,
): Promise<BackupLook> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(entry, { workerData: options });
    until.addEventListener('abort', () => void worker.terminate(), { once: true });
    worker.once('message', (reply: BackupReply) => {
      if ('look' in reply) resolve(reply.look);
      else if ('problem' in reply) reject(new ToldProblem(reply.problem));
      else reject(Object.assign(new Error('a backup broke'), { stack: reply.stack }));
    });
    worker.once('error', reject);
    worker.once('exit', () => {
      if (until.aborted) resolve({ what: 'elsewhere' });
      else reject(new Error('a thread that makes backups ended by itself'));
    });
  });
