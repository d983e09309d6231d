import type { PromiseWish } from '../reading/promise.ts';
import type { PlanWish } from './planWish.ts';
import { meanOver, sureOfShare, type PricedSpeed } from './pricedSpeed.ts';

/** What the next sheet's setting must keep to. */
export interface Bounds {
  /** Share of its sound parts that must come out. */
  readonly share: number;
  /** How sure that must be, 0–1. */
  readonly sure: number;
  /** Whether that share must be the expected one as well. */
  readonly inMean: boolean;
  /** Nothing is cut faster than this: nobody has seen anything near it come out. Infinity: nothing has been cut. */
  readonly fastestMmPerS: number;
}

/** How far an order is. */
export interface OrderState {
  /** Good parts that are still wanted. */
  readonly left: number;
  /** Parts of the next sheet. */
  readonly parts: number;
  /** Sound parts that did not come out so far, as far as is known: a flaw that was overlooked looks the same. */
  readonly notOut: number;
}

/** The bounds of an order's next sheet, by how far the order is. */
export type BoundsAt = (state: OrderState) => Bounds;

/** How sure the cheapest is that no more fail than are accepted. */
const sureOfAccepted = 0.8;

/** What is set aside of the accepted share for the sheets after the next one. */
const keptForLater = 0.5;

/**
 * Of one sheet no more than this share is risked. The accepted share itself is denied to none: what earlier ones lost more
 * is not won back by cutting the last ones ever slower.
 */
const mostRisked = 0.3;

/**
 * What the climb may reach beyond the fastest that came out, times: between a shape that came out and one that did not lies
 * no more than the first on most cards that a plan asks for. The cheapest asks no promise of a single sheet.
 */
const beyondWhatCameOut = { promise: 1.25, cheapest: 1.5 } as const;

/** What of the cuts so far bounds the next sheet, whatever the model makes of it. */
export interface SeenSoFar {
  /** The fastest that came out at this power or a lower one; null: nothing has been cut. */
  readonly outMmPerS: number | null;
  /** Where a promise is to be kept: one step slower than each count that failed it clearly. Infinity: none did. */
  readonly ceilingMmPerS: number;
}

export const nothingSeen: SeenSoFar = { outMmPerS: null, ceilingMmPerS: Infinity };

/**
 * The bounds of an order. Keep the promise: each sheet's own setting keeps it. Cheapest: of the whole order no more sound
 * parts fail than are accepted, expected and surely enough, so that a sheet which teaches may risk what others save.
 */
export const boundsOf = (
  { wish, acceptNotOutOf100, parts: wanted }: PlanWish,
  promise: PromiseWish,
  { outMmPerS, ceilingMmPerS }: SeenSoFar,
): BoundsAt => {
  const climbMmPerS = outMmPerS === null ? Infinity : beyondWhatCameOut[wish] * outMmPerS;
  const fastestMmPerS = wish === 'promise' ? Math.min(climbMmPerS, ceilingMmPerS) : climbMmPerS;
  if (wish === 'promise') {
    const bounds: Bounds = {
      share: promise.outOf100 / 100,
      sure: promise.surePct / 100,
      inMean: false,
      fastestMmPerS,
    };
    return () => bounds;
  }
  const accepted = acceptNotOutOf100 / 100;
  return ({ left, parts, notOut }) => {
    const later = keptForLater * accepted * Math.max(0, left - parts);
    const mayFail = (accepted * wanted - notOut - later) / parts;
    const risked = Math.min(Math.max(accepted, mostRisked), Math.max(accepted, mayFail));
    return { share: 1 - risked, sure: sureOfAccepted, inMean: true, fastestMmPerS };
  };
};

/** Whether a sheet may be cut at a speed, by what is known. */
export const keepsBounds = (weights: Float64Array, speed: PricedSpeed, bounds: Bounds): boolean =>
  speed.speedMmPerS <= bounds.fastestMmPerS + 1e-9 &&
  (!bounds.inMean || meanOver(weights, speed.outShare) >= bounds.share) &&
  sureOfShare(weights, speed, bounds.share) >= bounds.sure;
