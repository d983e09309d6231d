import type { Air } from '../machine/air.ts';
import type { Machine } from '../machine/machine.ts';
import type { EdgeGrade } from '../reading/edge.ts';
import type { Grade, SpoiltReason } from '../reading/grade.ts';
import type { PromiseWish } from '../reading/promise.ts';
import type { Habit, Tally } from '../reading/tally.ts';
import type { Beliefs } from './beliefs.ts';

/** One graded or spoilt test shape. A cell with neither grade nor reason is unread and counts for nothing. */
export interface StudyCell {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly passes: number;
  readonly minPowerPct?: number;
  readonly air?: Air;
  readonly batch?: string;
  readonly sheet?: string;
  /** Absent: the stock's. */
  readonly thicknessMm?: number;
  /** Absent: the reference shape's 60 mm. */
  readonly shapeLengthMm?: number;
  readonly grade?: Grade;
  readonly spoilt?: SpoiltReason;
  /** Of a shape that came out, where its edge was graded. */
  readonly edge?: EdgeGrade;
  /** That edge was cut through tape. Absent: not. */
  readonly taped?: true;
  /** So many shapes cut alike that ended alike; absent: one. */
  readonly count?: number;
  /** Parts of an order, counted by someone who had a place for flaws. Absent: test shapes. */
  readonly counted?: boolean;
}

/** What the fit is asked. Power alone: the fastest speed that holds. Speed alone: the least power that holds. Both: what that gives. Neither: over all allowed. */
export interface Ask {
  readonly powerPct?: number;
  readonly speedMmPerS?: number;
}

/** Everything the cut model looks at: the sole input of the fit and of the next card. */
export interface CutStudy {
  readonly machine: Machine;
  readonly stock: {
    readonly material: string;
    /** A person has looked at what it is (`acceptMaterial`). */
    readonly materialKnown?: true;
    readonly thicknessMm: number;
  };
  readonly cells: readonly StudyCell[];
  /**
   * Cells of earlier sheets of the same material, each naming its batch: they teach scatter, hanging band, flaws and how
   * speed goes with power and thickness, and say through the batch term where the changeover may lie. They are no evidence
   * about this sheet: none of them stands in for a cell that came out.
   */
  readonly history?: readonly StudyCell[];
  /** What sheets before those of `history` taught (`beliefsAfter`). Absent: nothing. */
  readonly beliefs?: Beliefs;
  readonly tallies: readonly (Tally & { readonly thicknessMm?: number })[];
  readonly habit?: Habit;
  readonly promise: PromiseWish;
  readonly ask: Ask;
  /** The batch that the answer is for, though nothing may have been cut from it yet. Absent: that of what was cut last. */
  readonly presentBatch?: string;
  /** What was changed on the machine since everything here was cut, and on which day. Absent: nothing was. */
  readonly machineChanged?: { readonly what: string; readonly day: string };
}

/** The same study by its own readings alone. */
export const withoutEarlier = (study: CutStudy): CutStudy => {
  const own: { -readonly [key in keyof CutStudy]: CutStudy[key] } = { ...study };
  delete own.history;
  delete own.beliefs;
  return own;
};
