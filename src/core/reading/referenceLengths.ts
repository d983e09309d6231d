import { referenceLengthMm } from './promise.ts';

/**
 * How many reference lengths a part of this length has, each a chance to fail: it comes out when each of them does. A part
 * shorter than the card's shape counts as one, since it is not known to be easier (ADR 0011).
 */
export const referenceLengthsIn = (lengthMm: number): number =>
  Math.max(1, lengthMm / referenceLengthMm);
