import { answerShare, inShares, type Share } from '../shares.ts';
import type { WorkshopModule } from '../workshop.ts';
import { allOrderMethods } from './orderMethods.ts';
import type { BenchOrder } from './benchOrder.ts';
import { playOrder, type OrderResult } from './referee.ts';

export interface OrderJob {
  readonly orders: number;
  readonly seed: number;
  readonly order: BenchOrder;
  readonly methods: readonly string[];
}

interface WorkshopJob extends OrderJob {
  readonly workshop: string;
}

/** Plays all orders of one workshop on every core. The outcome does not depend on how many there are. */
export const ordersInThreads = async (
  workshop: string,
  job: OrderJob,
): Promise<{ readonly name: string; readonly results: readonly OrderResult[] }> => {
  const { name } = await load(workshop);
  const played = await inShares<OrderResult>(import.meta.url, { ...job, workshop }, job.orders);
  const place = new Map(allOrderMethods.map((method, i) => [method.name, i]));
  const results = played.toSorted(
    (a, b) => (place.get(a.method) ?? 0) - (place.get(b.method) ?? 0) || a.seed - b.seed,
  );
  return { name, results };
};

const load = async (url: string): Promise<WorkshopModule> => (await import(url)) as WorkshopModule; // the border to files from outside: the contract is theirs to keep

const playShare = async ({
  job,
  part,
  parts,
}: Share<WorkshopJob>): Promise<readonly OrderResult[]> => {
  const module = await load(job.workshop);
  const results: OrderResult[] = [];
  for (let i = part; i < job.orders; i += parts) {
    for (const method of allOrderMethods) {
      if (!job.methods.includes(method.name)) continue;
      results.push(playOrder(module, method, job.seed + i, job.order));
    }
  }
  return results;
};

await answerShare(playShare);
