import { availableParallelism } from 'node:os';
import { Worker, isMainThread, parentPort, workerData } from 'node:worker_threads';

/** Which part of a job a thread does: every `parts`-th piece from `part` on. */
export interface Share<Job> {
  readonly job: Job;
  readonly part: number;
  readonly parts: number;
}

/**
 * Does a job of so many pieces on every core: the module at `url`, loaded in each thread, takes its share by
 * {@link answerShare} and gives an array. The outcome does not depend on how many threads there are if the caller orders it.
 */
export const inShares = async <Answer>(
  url: string,
  job: unknown,
  pieces: number,
): Promise<readonly Answer[]> => {
  const parts = Math.max(1, Math.min(availableParallelism(), pieces));
  const answers = await Promise.all(
    Array.from(
      { length: parts },
      (_, part) =>
        new Promise<readonly Answer[]>((resolve, reject) => {
          const worker = new Worker(new URL(url), { workerData: { job, part, parts } });
          worker.once('message', (answer: readonly Answer[]) => resolve(answer));
          worker.once('error', reject);
        }),
    ),
  );
  return answers.flat();
};

/** In a thread that {@link inShares} started: answers the share; elsewhere does nothing. */
export const answerShare = async <Job>(act: (share: Share<Job>) => unknown): Promise<void> => {
  if (!isMainThread) parentPort?.postMessage(await act(workerData as Share<Job>)); // the border between threads
};
