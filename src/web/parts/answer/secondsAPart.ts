import type { PromiseWish } from '../../../core/reading/promise.ts';

/** Time of the cut alone, in seconds: corners, jumps and the ramp of the machine come on top. */
export const secondsAPart = (
  { speedMmPerS }: { readonly speedMmPerS: number },
  { partLengthMm }: PromiseWish,
  passes = 1,
): number => (partLengthMm * passes) / speedMmPerS;
