import { clopperPearsonLower } from '../../num/binomialInterval.ts';
import { betaCdf } from '../../num/distributions.ts';
import type { PromiseWish } from '../reading/promise.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';
import type { Tally } from '../reading/tally.ts';

/** Orders put together, and how they stand to a promise by the count alone: no model is asked. */
export interface CountedOrders {
  readonly orders: number;
  /** Sound parts: those lost to a glue pocket or a knot say nothing of the setting. */
  readonly parts: number;
  readonly out: number;
  readonly notOut: number;
  readonly spoilt: number;
  /** How many not-out the promise allows for on average in so many parts of their lengths. */
  readonly allowedFor: number;
  /** Chance in 100 of so many not-out, or more, where exactly the promised share comes out. Nothing counted: 100. */
  readonly chanceOfSoManyPct: number;
  /** The count alone, without any model, shows the promised share as surely as was promised. */
  readonly borneOut: boolean;
}

/**
 * The share of parts of a length that the promise lets fail. A part of several reference lengths comes out when each of
 * them does (ADR 0011), so a promise of r for n lengths is one of r^(m/n) for m of them; a part shorter than the card's
 * shape counts as one.
 */
export const shareAllowedToFail = (promise: PromiseWish, partLengthMm: number): number =>
  1 -
  (promise.outOf100 / 100) **
    (referenceLengthsIn(partLengthMm) / referenceLengthsIn(promise.partLengthMm));

/**
 * Holds orders against a promise. Parts of several lengths have several chances; the count is held against as many parts
 * of the average chance, which calls a bad count no sooner than it should (Hoeffding 1956, Ann. Math. Stat. 27:713).
 * O(tallies).
 */
export const countOrders = (promise: PromiseWish, tallies: readonly Tally[]): CountedOrders => {
  const sum = (count: (tally: Tally) => number) =>
    tallies.reduce((total, tally) => total + count(tally), 0);
  const soundIn = ({ out, hangs, stays }: Tally) => out + hangs + stays;
  const parts = sum(soundIn);
  const out = sum((tally) => tally.out);
  const notOut = parts - out;
  const allowedFor = sum(
    (tally) => soundIn(tally) * shareAllowedToFail(promise, tally.partLengthMm),
  );
  const share = parts === 0 ? 0 : allowedFor / parts;
  return {
    orders: tallies.length,
    parts,
    out,
    notOut,
    spoilt: sum((tally) => tally.spoilt),
    allowedFor,
    chanceOfSoManyPct: 100 * chanceOfAtLeast(notOut, parts, share),
    borneOut:
      parts > 0 &&
      clopperPearsonLower({ x: out, n: parts }, promise.surePct / 100) >= 1 - share - 1e-12,
  };
};

/** P(X ≥ k) of n trials at chance p: the regularised incomplete beta function I_p(k, n − k + 1). */
const chanceOfAtLeast = (k: number, n: number, p: number): number =>
  k === 0 ? 1 : p <= 0 ? 0 : betaCdf(p, k, n - k + 1);
