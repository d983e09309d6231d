import type { EarlierVerdict } from '../cutmodel/earlierAgreement.ts';
import type { FitAnswer } from '../cutmodel/fitAnswer.ts';
import type { Problem } from '../problem.ts';
import type { Grade } from '../reading/grade.ts';

/** How another answer was reckoned: by weighing the points at hand anew, by a fit, or by weights where no fit was left. */
export type CalculatedBy = 'weights' | 'fit' | 'rough-weights';

/** What the answer would be without a part of what it rests on, at the same power. */
export interface LeftOut {
  /** Null: there would be no answer, for `reason`. */
  readonly speedMmPerS: number | null;
  readonly reason?: Problem;
  /** By how many per cent the speed would move, unrounded; null where there would be none. */
  readonly shiftPct: number | null;
  /** The same for the fastest speed at which the promise holds, whatever came out. */
  readonly holdingShiftPct: number;
  /** Whether the points at hand were weighed anew, or a fit was made; roughly weighed where fits would have taken too long. */
  readonly by: CalculatedBy;
  /** Shape of the tail of the weights; above 0.5 a fit is made, where there is time for it. */
  readonly paretoShape: number;
}

/** Cells that belong together, and what the answer would be without them. */
export interface PartLeftOut extends LeftOut {
  /** Indices of the study's cells. */
  readonly cells: readonly number[];
  /** How its card or sheet is called; empty where it has no name. */
  readonly name: string;
}

/** An order or an earlier batch left out. */
export interface OtherLeftOut extends LeftOut {
  readonly name: string;
  /** Shapes or parts that it counts. */
  readonly shapes: number;
}

/** One more cell, and the answer after each grade that it may get. */
export interface NextCellChange {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly after: Readonly<
    Record<
      Grade,
      {
        readonly probability: number;
        readonly speedMmPerS: number | null;
        readonly by: CalculatedBy;
      }
    >
  >;
}

/** What the model has to learn. */
export type LearntName =
  | 'changeover'
  | 'scatter'
  | 'hang-band'
  | 'power'
  | 'sheet-scatter'
  | 'flaws'
  | 'thickness'
  | 'passes'
  | 'corners';

/** How much one quantity of the model was learnt, and from what. Changeover, scatter and hanging band in ln. */
export interface Learnt {
  readonly name: LearntName;
  readonly priorMean: number;
  readonly priorSd: number;
  readonly mean: number;
  readonly sd: number;
  /** 1 − variance/prior variance in per cent, never below 0. */
  readonly learntPct: number;
  /** The same by this study's own cells, tallies and habit, where earlier sheets taught too. Absent: that fit would have taken too long. */
  readonly learntByOwnPct?: number;
}

export type WhatIfName =
  | 'scatter-twice-as-unsure'
  | 'scatter-half-as-unsure'
  | 'scatter-expected-twice'
  | 'scatter-expected-half'
  | 'changeover-twice-as-unsure'
  | 'no-grade-misread'
  | 'thrice-as-many-misread'
  | 'normal-alone'
  | 'logistic-alone'
  | 'student3-alone';

/** The answer under another assumption. */
export interface WhatIf {
  readonly name: WhatIfName;
  readonly speedMmPerS: number | null;
  readonly shiftPct: number | null;
}

/** How much an answer leans on earlier sheets. */
export interface Leaning {
  readonly shapes: number;
  readonly withMmPerS: number | null;
  /** By the sheet alone, and whether that agrees. Absent: its fit would have taken too long. */
  readonly withoutMmPerS?: number | null;
  readonly verdict?: EarlierVerdict;
}

/** What carries the fastest speed that may be recommended at one power. */
export interface SpeedExplained {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  /** The fastest at which the promise holds, before it is held to what came out and rounded down. */
  readonly holdingMmPerS: number;
  /** What keeps it from being faster. */
  readonly heldBy: 'promise' | 'fastest-out' | 'machine';
  /** One entry a cell of the study; null where it was not graded, or its power says nothing. */
  readonly cells: readonly (LeftOut | null)[];
  readonly rungs: readonly PartLeftOut[];
  readonly cards: readonly PartLeftOut[];
  readonly orders: readonly OtherLeftOut[];
  readonly habit?: LeftOut;
  readonly earlier: readonly OtherLeftOut[];
  readonly nextCells: readonly NextCellChange[];
  readonly whatIf: readonly WhatIf[];
  /** Assumptions whose fits would have taken too long. */
  readonly untried: readonly WhatIfName[];
}

/** What carries an answer, what would change it, and what of it rests on expectation. */
export interface Explanation {
  readonly version: 1;
  readonly answer: FitAnswer;
  /** Absent where nothing is recommended. */
  readonly speed?: SpeedExplained;
  readonly learnt: readonly Learnt[];
  readonly leaning?: Leaning;
  readonly calculation: {
    readonly points: number;
    readonly effectivePoints: number;
    /** Shape of the tail of the posterior's own weights. */
    readonly paretoShape: number;
    /** Parts and next shapes for which weights would not do, so that a fit was made. */
    readonly fits: number;
    /** Parts and next shapes for which a fit would have taken too long, so that weights had to do: roughly. */
    readonly rough: number;
  };
}
