/** Why two conditions cannot be compared. */
export const compareReasonCodes = [
  'compare-side-unread',
  'compare-piece-on-both-sides',
  'compare-two-materials',
  'compare-not-settled',
] as const;

/** What is to be said beside a comparison. */
export const compareRemarkCodes = [
  'compare-own-sheets',
  'compare-partly-own-sheets',
  'compare-batches-too',
  'compare-differs-too',
  'compare-mixed-side',
  'compare-all-out',
  'compare-none-out',
  'compare-rests-on-prior',
  'compare-plain-power',
] as const;

export type CompareReasonCode = (typeof compareReasonCodes)[number];
export type CompareRemarkCode = (typeof compareRemarkCodes)[number];
