import { availableParallelism } from 'node:os';
import { Worker, isMainThread, parentPort, workerData } from 'node:worker_threads';
import { play, type Result } from './campaign.ts';
import { methodsAndBound } from './methods/all.ts';
import type { Limits } from './methods/method.ts';
import type { WorkshopModule } from './workshop.ts';

export interface Job {
  readonly runs: number;
  readonly seed: number;
  readonly limits: Limits;
  readonly methods: readonly string[];
}

interface Share extends Job {
  readonly workshop: string;
  readonly part: number;
  readonly parts: number;
}

/** Plays all seeds of one workshop on every core. The outcome does not depend on how many there are. */
export const runInThreads = async (
  workshop: string,
  job: Job,
): Promise<{ readonly name: string; readonly results: readonly Result[] }> => {
  const { name } = await load(workshop);
  const parts = Math.max(1, Math.min(availableParallelism(), job.runs));
  const shares = await Promise.all(
    Array.from({ length: parts }, (_, part) => inThread({ ...job, workshop, part, parts })),
  );
  const order = new Map(methodsAndBound.map((method, i) => [method.name, i]));
  const results = shares
    .flat()
    .sort((a, b) => (order.get(a.method) ?? 0) - (order.get(b.method) ?? 0) || a.seed - b.seed);
  return { name, results };
};

const inThread = (share: Share): Promise<readonly Result[]> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: share });
    worker.once('message', (results: readonly Result[]) => resolve(results));
    worker.once('error', reject);
  });

const load = async (url: string): Promise<WorkshopModule> => (await import(url)) as WorkshopModule; // the border to files from outside: the contract is theirs to keep

const playShare = async ({ workshop, part, parts, runs, seed, limits, methods }: Share) => {
  const module = await load(workshop);
  const results: Result[] = [];
  for (let i = part; i < runs; i += parts) {
    for (const method of methodsAndBound) {
      if (!methods.includes(method.name)) continue;
      results.push(play(module, method, seed + i, limits));
    }
  }
  parentPort?.postMessage(results);
};

if (!isMainThread) await playShare(workerData as Share);
