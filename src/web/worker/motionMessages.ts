import type { MotionFit, TimedJob } from '../../core/motion/fitMotion.ts';
import type { Outcome } from '../../core/problem.ts';

/** What the page asks of the thread that works out how a machine moves: one list of jobs in the thread's life. */
export type MotionQuestion = readonly TimedJob[];

/** What comes back. `broke`: a bug, told so that the page can say it. */
export type MotionReply =
  | { readonly kind: 'fitted'; readonly fit: Outcome<MotionFit> }
  | { readonly kind: 'broke'; readonly message: string };
