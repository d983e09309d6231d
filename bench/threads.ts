import { play, type Result } from './campaign.ts';
import { methodsAndBound } from './methods/all.ts';
import type { Limits } from './methods/method.ts';
import { answerShare, inShares, type Share } from './shares.ts';
import type { WorkshopModule } from './workshop.ts';

export interface Job {
  readonly runs: number;
  readonly seed: number;
  readonly limits: Limits;
  readonly methods: readonly string[];
}

interface WorkshopJob extends Job {
  readonly workshop: string;
}

/** Plays all seeds of one workshop on every core. The outcome does not depend on how many there are. */
export const runInThreads = async (
  workshop: string,
  job: Job,
): Promise<{ readonly name: string; readonly results: readonly Result[] }> => {
  const { name } = await load(workshop);
  const played = await inShares<Result>(import.meta.url, { ...job, workshop }, job.runs);
  const order = new Map(methodsAndBound.map((method, i) => [method.name, i]));
  const results = played.toSorted(
    (a, b) => (order.get(a.method) ?? 0) - (order.get(b.method) ?? 0) || a.seed - b.seed,
  );
  return { name, results };
};

const load = async (url: string): Promise<WorkshopModule> => (await import(url)) as WorkshopModule; // the border to files from outside: the contract is theirs to keep

const playShare = async ({ job, part, parts }: Share<WorkshopJob>): Promise<readonly Result[]> => {
  const module = await load(job.workshop);
  const results: Result[] = [];
  for (let i = part; i < job.runs; i += parts) {
    for (const method of methodsAndBound) {
      if (!job.methods.includes(method.name)) continue;
      results.push(play(module, method, job.seed + i, job.limits));
    }
  }
  return results;
};

await answerShare(playShare);
