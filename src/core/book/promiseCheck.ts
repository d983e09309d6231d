import { betaCdf } from '../../num/distributions.ts';
import { clopperPearsonLower } from '../../num/binomialInterval.ts';
import type { PromiseWish } from '../reading/promise.ts';
import type { Tally } from '../reading/tally.ts';

/** How the orders that were tallied stand to the promise. */
export interface PromiseCheck {
  /** Sound parts tallied: those lost to a glue pocket or a knot say nothing of the setting. */
  readonly parts: number;
  readonly out: number;
  readonly notOut: number;
  readonly spoilt: number;
  /** How many not-out the promise allows for, on average, in so many parts. */
  readonly allowedFor: number;
  /** Chance in 100 of so many not-out, or more, if exactly the promised share came out. Absent: nothing tallied. */
  readonly chanceOfSoManyPct?: number;
  readonly verdict:
    | 'nothing-tallied'
    /** So few that even the promised share would hardly have lost one. */
    | 'too-few-to-say'
    /** Nothing speaks against the promise. */
    | 'as-promised'
    /** The count alone, without any model, shows it: as surely as was promised. */
    | 'borne-out'
    | 'worse-than-promised';
}

/** Below this chance a bad count is no longer put down to luck. Common practice, no source. */
const unluckyPct = 5;

/**
 * Holds tallies against a promise by the exact binomial distribution: the chance of so many failures or more, and
 * Clopper & Pearson's lower limit of the share that comes out. O(tallies).
 */
export const checkPromise = (promise: PromiseWish, tallies: readonly Tally[]): PromiseCheck => {
  const sum = (count: (tally: Tally) => number) =>
    tallies.reduce((total, tally) => total + count(tally), 0);
  const out = sum((tally) => tally.out);
  const notOut = sum((tally) => tally.hangs + tally.stays);
  const spoilt = sum((tally) => tally.spoilt);
  const parts = out + notOut;
  const failing = 1 - promise.outOf100 / 100;
  const counted = { parts, out, notOut, spoilt, allowedFor: parts * failing };
  if (parts === 0) return { ...counted, verdict: 'nothing-tallied' };
  const chanceOfSoManyPct = 100 * atLeast(notOut, parts, failing);
  const proven =
    clopperPearsonLower({ x: out, n: parts }, promise.surePct / 100) >= promise.outOf100 / 100;
  return {
    ...counted,
    chanceOfSoManyPct,
    verdict:
      chanceOfSoManyPct < unluckyPct
        ? 'worse-than-promised'
        : proven
          ? 'borne-out'
          : counted.allowedFor < 1
            ? 'too-few-to-say'
            : 'as-promised',
  };
};

/** P(X ≥ k) of n trials at chance p: the regularised incomplete beta function I_p(k, n − k + 1). */
const atLeast = (k: number, n: number, p: number): number =>
  k === 0 ? 1 : betaCdf(p, k, n - k + 1);
