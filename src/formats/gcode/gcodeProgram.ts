export type Position = readonly [xMm: number, yMm: number, zMm: number];
export type Plane = 'G17' | 'G18' | 'G19';

/** One motion, in machine positions (mm), with the state in force while it moves. */
export interface GcodeMove {
  readonly line: number;
  readonly type: 'rapid' | 'line' | 'arcCw' | 'arcCcw';
  readonly start: Position;
  readonly end: Position;
  /** mm/min; null for rapid moves and under inverse time. */
  readonly feedMmPerMin: number | null;
  readonly s: number;
  readonly spindle: 3 | 4 | 5;
  readonly air: boolean;
  readonly lengthMm: number;
  readonly minutes: number;
  readonly arc?: {
    readonly plane: Plane;
    readonly centre: readonly [number, number];
    readonly radiusMm: number;
    readonly sweepRad: number;
  };
}

/** What a program leaves behind for the one that comes after it. */
export interface GcodeState {
  readonly position: Position;
  readonly motion: string;
  readonly plane: Plane;
  readonly distance: 'G90' | 'G91';
  readonly feedMode: 'G93' | 'G94';
  readonly units: 'G20' | 'G21';
  readonly spindle: 3 | 4 | 5;
  readonly air: boolean;
  readonly feedMmPerMin: number;
  readonly s: number;
  readonly offsetMm: Position;
}

/** A program as it was carried out. Lines are counted from 1. */
export interface GcodeProgram {
  readonly moves: readonly GcodeMove[];
  readonly comments: readonly { readonly line: number; readonly text: string }[];
  readonly dwells: readonly {
    readonly line: number;
    readonly seconds: number;
    readonly lit: boolean;
  }[];
  /** By which word it ended; null where it ran out of lines. */
  readonly programEnd: { readonly line: number; readonly by: 2 | 30 } | null;
  readonly final: GcodeState;
  /** Words that were passed over. */
  readonly unknown: readonly { readonly line: number; readonly word: string }[];
  /** Words that set the zero or choose another. */
  readonly zeroes: readonly { readonly line: number; readonly word: string }[];
  /** The first move in other units than those before; null where there is none. */
  readonly unitsChange: number | null;
  /** Whether the program itself says its units and distance mode before it moves. */
  readonly declared: { readonly units: boolean; readonly distance: boolean };
  /** Lines that say an F or an S. */
  readonly saysFeed: ReadonlySet<number>;
  readonly saysPower: ReadonlySet<number>;
}

export interface GcodeError {
  readonly line: number;
  readonly why: string;
  readonly movesBefore: number;
}
