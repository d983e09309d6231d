import type { Comparison } from '../../core/compare/compareConditions.ts';
import type { TwoConditions } from '../../core/compare/twoConditions.ts';
import type { Outcome } from '../../core/problem.ts';

/** What the page asks of the thread that compares: one comparison in the thread's life. */
export type CompareQuestion = TwoConditions;

/** What comes back. `broke`: a bug, told so that the page can say it. */
export type CompareReply =
  | { readonly kind: 'compared'; readonly comparison: Outcome<Comparison> }
  | { readonly kind: 'broke'; readonly message: string };
