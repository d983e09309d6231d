/**
 * What the user wants promised: `outOf100` in 100 sound parts come out and we are `surePct` % sure, for a part of this
 * outline length, on this sheet, averaged over the sheets of this batch, or on a batch not seen yet.
 */
export interface PromiseWish {
  /** Above 50 and below 100; may be fractional (99.65). */
  readonly outOf100: number;
  /** 50 or more, below 100. */
  readonly surePct: number;
  readonly partLengthMm: number;
  readonly for: 'sheet' | 'batch' | 'newBatch';
}

/** Length of cut of the reference shape, in mm. */
export const referenceLengthMm = 60;

export const defaultPromise: PromiseWish = {
  outOf100: 97,
  surePct: 95,
  partLengthMm: referenceLengthMm,
  for: 'batch',
};
