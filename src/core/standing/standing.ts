import type { Setting } from '../machine/setting.ts';
import type { RawProblem } from '../problem.ts';
import type { PromiseWish } from '../reading/promise.ts';
import type { StandingCode } from '../problems/standing.ts';
import type { CountedOrders } from './countedOrders.ts';

/** How a sheet, or a setting that was kept, stands; the worst first. */
export const standingKinds = ['failed', 'not-known', 'watch-it', 'holds'] as const;

export type StandingKind = (typeof standingKinds)[number];

/** What to do next about it. */
export const nextActs = [
  'cut-strip',
  'cut-card',
  'card-that-reaches',
  'finish-reading',
  'keep-it',
  'count-order',
  'nothing-to-do',
] as const;

export type NextAct = (typeof nextActs)[number];

/** A reason with its figures; where it is given on, they may be another program's. */
export type StandingReason = RawProblem & { readonly code: StandingCode };

/** What is to be said of one stock, wherever it is shown: decided here once, from cards, orders and strips together. */
export interface Standing {
  readonly kind: StandingKind;
  /** The one setting to run now. Absent: nobody can say one. */
  readonly run?: Setting;
  /** `run` lies outside what was cut. */
  readonly isGuess: boolean;
  /** The chief reason. */
  readonly why: StandingReason;
  readonly next: NextAct;
  /** What is promised, for the part that is cut. */
  readonly promise: PromiseWish;
  /** The orders cut with the setting itself. */
  readonly counted: CountedOrders;
}

/** The worst of several. */
export const rankOf = (kind: StandingKind): number => standingKinds.indexOf(kind);
