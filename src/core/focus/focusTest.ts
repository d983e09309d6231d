import type { MachineTest, Unkept } from '../machineTests.ts';
import type { ProblemOf } from '../problem.ts';
import type { FocusCode } from '../problems/focus.ts';
import type { FocusRamp } from './focusRamp.ts';

/** One line drawn up a ramp: where it fades out on both sides. */
export interface FadedLine {
  /** From the strip's low edge, along the strip, mm. Null: it still showed at that end. */
  readonly fromMm: number | null;
  readonly toMm: number | null;
  /** Power over speed, on any scale that is the same for all lines: with two doses or more the depth of focus shows. */
  readonly dose?: number;
}

/** What was read off the strip. */
export type FocusReadings =
  | { readonly kind: 'fades'; readonly lines: readonly FadedLine[] }
  | {
      readonly kind: 'widths';
      readonly widths: readonly { readonly alongMm: number; readonly widthMm: number }[];
    };

/** One test of where the focus is, on one day. */
export interface FocusTest extends MachineTest {
  readonly ramp: FocusRamp;
  readonly readings: FocusReadings;
  /** Height of the fixed gauge that the workshop sets its focus by, mm. */
  readonly gaugeMm?: number;
}

/** What was read, before anybody keeps it. */
export type UnkeptFocusTest = Unkept<FocusTest>;

/** A figure with the interval in which it lies with 95 % confidence. */
export interface Interval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Where the focus is. */
export interface FocusEstimate {
  /** Along the strip from its low edge, mm. */
  readonly alongMm: Interval;
  /** The gap between nozzle and sheet at which the sheet lies in the focus, mm. */
  readonly gapMm: Interval;
  /** From the focus to where the beam's area has doubled, mm; null where the readings do not tell. */
  readonly rayleighMm: Interval | null;
  readonly remarks: readonly ProblemOf<FocusCode>[];
}
