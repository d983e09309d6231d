import { text, type ProblemList } from './param.ts';

/** Why two conditions cannot be compared. */
export const compareReasonProblems = {
  'compare-side-unread': { side: text },
  'compare-piece-on-both-sides': {},
  'compare-two-materials': { first: text, second: text },
  'compare-not-settled': {},
} as const satisfies ProblemList;

/** What is to be said beside a comparison. */
export const compareRemarkProblems = {
  'compare-own-sheets': {},
  'compare-partly-own-sheets': {},
  'compare-batches-too': {},
  'compare-differs-too': { what: text },
  'compare-mixed-side': { what: text },
  'compare-all-out': {},
  'compare-none-out': {},
  'compare-rests-on-prior': {},
  'compare-plain-power': {},
} as const satisfies ProblemList;

export type CompareReasonCode = keyof typeof compareReasonProblems;

export type CompareRemarkCode = keyof typeof compareRemarkProblems;
