import { referenceLengthMm, type PromiseWish } from '../reading/promise.ts';
import type { Tally } from '../reading/tally.ts';

/** A promise, and the orders that were counted under it, oldest first. */
export interface PromiseWithOrders {
  readonly promise: PromiseWish;
  readonly tallies: readonly Pick<Tally, 'partLengthMm'>[];
}

/**
 * The length of cut of the part that is made: what was asked for, else what the first order said. Undefined while nobody
 * said: the card's own shape is no part.
 */
export const partLengthOf = ({ promise, tallies }: PromiseWithOrders): number | undefined =>
  promise.partLengthMm === referenceLengthMm ? tallies[0]?.partLengthMm : promise.partLengthMm;

/** The promise for the part that is cut: it holds for that length wherever it is shown or checked. */
export const promiseOf = (known: PromiseWithOrders): PromiseWish => ({
  ...known.promise,
  partLengthMm: partLengthOf(known) ?? known.promise.partLengthMm,
});

/** What a kept setting is promised for: the length of its part may have become known on its sheet since it was kept. */
export const promiseKept = (kept: PromiseWish, ofSheet: PromiseWish | undefined): PromiseWish =>
  kept.partLengthMm === referenceLengthMm && ofSheet !== undefined
    ? { ...kept, partLengthMm: ofSheet.partLengthMm }
    : kept;
