import { parentPort, workerData } from 'node:worker_threads';
import { takeBackup, type TakeOptions } from './takeBackup.ts';
import type { BackupReply } from './inThread.ts';
import type { Problem } from '../../core/problem.ts';

/** A thread's program: it looks once whether a backup is due, and ends. */
const looked = async (): Promise<BackupReply> => {
  try {
    return { look: await takeBackup(workerData as TakeOptions) };
  } catch (thrown) {
    if (thrown instanceof Error && 'problem' in thrown)
      return { problem: thrown.problem as Problem };
    return { stack: thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown) };
  }
};

void looked().then((reply) => parentPort?.postMessage(reply));
