import type { GcodeDialect } from '../dialect/gcodeDialect.ts';
import type { MotionValues } from '../motion/motionValues.ts';

/** One reading of the milliammeter at one power setting. */
export interface TubePoint {
  readonly powerPct: number;
  readonly currentMa: number;
}

/** One slow setting that has cut a sheet through: how strong a machine is, for whoever does not know its watts. */
export interface SlowCut {
  readonly material: string;
  readonly thicknessMm: number;
  readonly powerPct: number;
  readonly speedMmPerS: number;
}

/** One laser cutter, as far as an answer depends on it. Everything that is absent is said to be missing, never guessed. */
export interface Machine {
  readonly name?: string;
  /** What the tube is sold as, W: about how strong it is when new and well set up. Absent: nobody said. */
  readonly nominalW?: number;
  /** Without meaning where the watts are said. */
  readonly slowCut?: SlowCut;
  /** Asked how strong it is, a person said that they do not know: it is not asked again. */
  readonly strengthUnknown?: true;
  readonly ratedCurrentMa?: number;
  /** Ascending in `powerPct`. Without them the setting itself stands for the delivered fraction. */
  readonly tubePoints?: readonly TubePoint[];
  readonly maxPowerPct: number;
  readonly speedRangeMmPerS: readonly [least: number, most: number];
  /** At or below this speed many controllers run wholly on the power in corners. */
  readonly powerRampStartMmPerS?: number;
  /** How it moves, told from timed jobs or from the controller's own settings. */
  readonly motion?: MotionValues;
  readonly bed?: Bed;
  /** How it wants its G-code, where it takes any. */
  readonly gcode?: GcodeDialect;
}

export interface Bed {
  readonly widthMm: number;
  readonly heightMm: number;
  /** The widest gap between slats or honeycomb walls: a cell must be bigger. */
  readonly gapMm?: number;
}

/** What is assumed of a machine that nobody has described yet. */
export const undescribedMachine: Machine = { maxPowerPct: 100, speedRangeMmPerS: [1, 100] };
