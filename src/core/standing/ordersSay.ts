import type { PromiseWish } from '../reading/promise.ts';
import type { Tally } from '../reading/tally.ts';
import { countOrders, type CountedOrders } from './countedOrders.ts';

/** How surely an order has to be bad before it is no longer put down to luck. Common practice, no source. */
export const unlucky = {
  /** All orders at a setting together: chance in 100. */
  allPct: 5,
  /** Some of them in a row, of which there are many to look at: chance in 100. */
  runPct: 0.5,
  /** The last one alone: worth an eye, not yet a verdict. */
  lastPct: 5,
} as const;

/** What the orders cut with one setting say of its promise. */
export type OrdersSay =
  /** Too bad for luck, all together or lately. */
  | { readonly kind: 'failed'; readonly by: CountedOrders; readonly lately: boolean }
  /** Too bad for luck once; those since are not. */
  | { readonly kind: 'slipped'; readonly by: CountedOrders }
  /** More than the promise allows for, as luck may have it. */
  | { readonly kind: 'unlucky'; readonly by: CountedOrders }
  | { readonly kind: 'fine'; readonly by: CountedOrders }
  | { readonly kind: 'none' };

/**
 * Judges orders with one setting, oldest first, by every run of them: more parts that failed, in whichever order, never
 * make it better. O(orders²) sums.
 */
export const whatOrdersSay = (promise: PromiseWish, orders: readonly Tally[]): OrdersSay => {
  const all = countOrders(promise, orders);
  if (all.parts === 0) return { kind: 'none' };
  if (all.chanceOfSoManyPct < unlucky.allPct) return { kind: 'failed', by: all, lately: false };
  const recent = orders.slice(-mostLookedAt);
  const bad = (from: number, to: number): CountedOrders | undefined => {
    const counted = countOrders(promise, recent.slice(from, to));
    return counted.chanceOfSoManyPct < unlucky.runPct ? counted : undefined;
  };
  const starts = recent.map((_, from) => from);
  const lately = starts.map((from) => bad(from, recent.length)).find((run) => run !== undefined);
  if (lately !== undefined) return { kind: 'failed', by: lately, lately: true };
  const once = starts
    .flatMap((from) => starts.slice(from).map((last) => bad(from, last + 1)))
    .find((run) => run !== undefined);
  if (once !== undefined) return { kind: 'slipped', by: once };
  const last = countOrders(promise, orders.slice(-1));
  if (last.chanceOfSoManyPct < unlucky.lastPct) return { kind: 'unlucky', by: last };
  return { kind: all.notOut > all.allowedFor ? 'unlucky' : 'fine', by: all };
};

/** Runs are looked for among so many of the newest orders. */
const mostLookedAt = 60;
