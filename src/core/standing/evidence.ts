import type { Setting } from '../machine/setting.ts';
import type { PromiseWish } from '../reading/promise.ts';
import type { Tally } from '../reading/tally.ts';
import type { StripVerdict } from '../watch/stripVerdict.ts';
import type { Reach } from '../cutmodel/reach.ts';

/** A setting that was kept, as the book has it. */
export interface KeptSeen {
  readonly setting: Setting;
  /** The promise that it was kept for. */
  readonly promise: PromiseWish;
  /** What the model said when it was kept. */
  readonly outOf100Mean: number;
  readonly surePct: number;
}

/** What the answer to the sheet's cards and orders says now. */
export interface AnswerSeen {
  /** The setting that holds; null: none can be said. */
  readonly recommended: Setting | null;
  /** The answer's own word that it lies outside what was cut. */
  readonly isGuess: boolean;
  /** The fastest speed that holds at the power of the kept setting; null: none. */
  readonly holdsAtKeptMmPerS: number | null;
  /** Slower than this too many weld back, so slower is no surer; absent: no such thing was seen. */
  readonly staysOpenFromMmPerS?: number;
}

/** An order with its time. */
export type OrderSeen = Tally & { readonly id: string; readonly at: string };

/** A check strip that was read, and what it says of the kept setting. */
export interface StripSeen {
  readonly code: string;
  readonly at: string;
  readonly of: 'reference' | 'new-batch';
  readonly verdict: Exclude<StripVerdict, { readonly kind: 'unread' }>;
}

/** All that decides how a stock stands. */
export interface StandingEvidence {
  /** Absent: nothing was kept of this sheet yet. */
  readonly kept?: KeptSeen;
  /** Absent: not asked, since nothing was said of the sheet since the setting was kept. */
  readonly answer?: AnswerSeen;
  /** For the part that is cut. */
  readonly promise: PromiseWish;
  /** All orders of the stock, oldest first. */
  readonly orders: readonly OrderSeen[];
  /** Oldest first. */
  readonly strips: readonly StripSeen[];
  /** Where a card is read in part: how far. */
  readonly halfRead?: { readonly read: number; readonly cells: number };
  /** What was cut of this stock; absent: its cards are gone. */
  readonly reach?: Reach;
  /** The chart over orders and strips is beyond its limit: worse than was foreseen, if not than was promised. */
  readonly isChartAlarmed: boolean;
  /** An answer or a strip has a say, and could not be worked out. Absent: nothing is missing. */
  readonly isSumMissing?: boolean;
}
