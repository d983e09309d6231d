import type { Air } from '../machine/air.ts';
import type { Problem } from '../problem.ts';
import type { BestEdge } from '../reading/edge.ts';
import type { EdgeShare } from './edgeBeliefs.ts';

export interface MeanSd {
  readonly mean: number;
  readonly sd: number;
}

/** A setting that holds, with the promise that was asked for and what it really attains. */
export interface Recommendation {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly passes: number;
  /** What air it is for: that of the last cell. Absent: nobody noted it. */
  readonly air?: Air;
  /** The promise asked for, echoed. */
  readonly outOf100: number;
  readonly surePct: number;
  /** Of 100 sound parts at this very setting, how many come out on average over what is known. */
  readonly outOf100Mean: number;
  /** How sure of the promise at this very setting, after rounding down. */
  readonly sureAtSpeedPct: number;
  /** A guess: outside the cells that were cut. */
  readonly guess: boolean;
}

/** Whether going over the sheet several times pays. */
export interface MorePasses {
  readonly passes: number;
  readonly powerPct: number;
  /** The fastest speed of each pass that keeps the promise. */
  readonly speedMmPerS: number;
  /** How much quicker a part is than in one pass, in per cent of speed; below 0: slower. Null where one pass has no answer. */
  readonly quickerPct: number | null;
}

/** What one setting gives. */
export interface SettingForecast {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly outOf100Mean: number;
  readonly sureOfPromisePct: number;
}

/** What graded edges say of the answer: how many are of the best grade, and which setting that holds has surely more. */
export interface EdgeAnswer {
  readonly best: BestEdge;
  /** All of it is of edges cut through tape. */
  readonly taped: boolean;
  /** How many were graded that were cut as the answer is, and how many it takes to say something. */
  readonly edges: number;
  readonly wanted: number;
  /** At the recommended setting; null: not known yet. */
  readonly here: EdgeShare | null;
  /** A setting that keeps the promise and has a surely better edge. Absent: there is none, or nobody knows yet. */
  readonly preferred?: EdgeShare &
    SettingForecast & {
      readonly passes: number;
      /** How many seconds more than at the recommended a part takes; below 0: fewer. Time of the cut alone. */
      readonly secondsMore: number;
    };
}

/** One point of the line of the fastest speed that holds, by power; and of the changeover under it. */
export interface LinePoint {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly currentMa?: number;
}

/** The changeover at one power setting, for the picture: where half come out, with the band in which it lies. */
export interface ChangeoverPoint {
  readonly powerPct: number;
  readonly v50MmPerS: number;
  /** 5 % and 95 % of what is known of v50. */
  readonly lowMmPerS: number;
  readonly highMmPerS: number;
}

/** A cell or rung whose reading the model doubts, or that told nothing. Indices into the study's cells. */
export interface CellRemark {
  readonly cellIndex: number;
  readonly kind: 'look-again' | 'told-nothing' | 'overdriven';
  /** Posterior probability of the grade that was given. */
  readonly probability: number;
}

export interface FitAnswer {
  readonly version: 1;
  readonly posterior: {
    readonly lnV50At: MeanSd & { readonly powerPct: number };
    readonly powerExponent: MeanSd;
    readonly sigma: MeanSd;
    readonly hangBand: MeanSd;
    readonly flawsPerMetre: MeanSd;
    readonly sheetSd: MeanSd;
    /** Only where cells with less power in corners were cut. */
    readonly cornersExponent?: MeanSd;
  };
  readonly recommended: Recommendation | null;
  /** Why there is no recommendation. */
  readonly reason?: Problem;
  /** One step surer than the recommended (production default; absent where slower is not surer, since it welds back), and one step faster: what each gives. */
  readonly oneStepSurer?: SettingForecast;
  readonly oneStepFaster?: SettingForecast;
  /** What would do if an even chance of the promise were enough: how much of the setting is thin evidence. */
  readonly evenOdds?: { readonly powerPct: number; readonly speedMmPerS: number };
  /** What keeps the promise on the board that all cards were cut from, at the recommended power; only where it is faster. */
  readonly onThisSheet?: { readonly powerPct: number; readonly speedMmPerS: number };
  readonly asked?: SettingForecast;
  /** The most passes that were tried, at the recommended power; only where cells of more than one pass were cut. */
  readonly morePasses?: MorePasses;
  /** The least power in corners that keeps the promise one step surer than recommended; only where cells tell of corners. */
  readonly corners?: { readonly speedMmPerS: number; readonly leastMinPowerPct: number };
  /** Only where edges were graded. */
  readonly edge?: EdgeAnswer;
  readonly line: readonly LinePoint[];
  readonly changeover: readonly ChangeoverPoint[];
  readonly powerLimit: { readonly powerPct: number; readonly because: 'machine' | 'rated-current' };
  readonly remarks: readonly CellRemark[];
  readonly warnings: readonly Problem[];
  readonly convergence: {
    readonly ok: boolean;
    readonly points: number;
    /** Kish's effective number, of the lines on which the points lie. */
    readonly effectivePoints: number;
    readonly linkProbabilities: Readonly<Record<'normal' | 'logistic' | 'student3', number>>;
  };
}

export interface NextCardAnswer {
  readonly cells: readonly {
    readonly powerPct: number;
    readonly speedMmPerS: number;
    readonly passes: number;
    readonly rung: string;
  }[];
  /** Distinct settings to type. */
  readonly settings: number;
  /** By how much the recommended speed is expected to rise, in per cent. */
  readonly expectedGainPct: number;
  /** The fastest speed that holds now, which is to rise; null where nothing can be recommended yet. */
  readonly fastestNowMmPerS: number | null;
  readonly worthCutting: boolean;
  readonly reason: Problem;
}
