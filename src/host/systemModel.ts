import { availableParallelism } from 'node:os';
import { extname } from 'node:path';
import { openModelPool, type ModelPool } from './modelPool.ts';

/** The program of a thread lies beside this one; a thread runs what is built, also where this was loaded as it was written. */
const entry = new URL(
  extname(import.meta.url) === '.ts' ? '../../build/src/host/modelThread.js' : './modelThread.js',
  import.meta.url,
);

/** At least two threads: one hard sum is never in the way of all the others. Memory: of a small computer beside a browser. */
const usual = {
  entry,
  threads: Math.min(4, Math.max(2, availableParallelism())),
  limitMb: 480,
  waitingAtMost: 100,
} as const;

/** For a server, behind which people wait. */
export const serverModel = (): ModelPool => openModelPool({ ...usual, limitMs: 20_000 });

/** For a command: whoever typed it waits for it alone. */
export const commandModel = (): ModelPool =>
  openModelPool({ ...usual, threads: 1, limitMs: 60_000 });
