/** A straight move between two speeds in the shortest time. */
export interface Trapezoid {
  readonly feasible: true;
  /** `trapezoid` where the limit is held for a while, `triangle` where the length is too short for that. */
  readonly shape: 'trapezoid' | 'triangle';
  readonly peakMmPerS: number;
  readonly rising: Stretch;
  readonly level: Stretch;
  readonly falling: Stretch;
  readonly seconds: number;
}

export interface Stretch {
  readonly seconds: number;
  readonly lengthMm: number;
}

export type TrapezoidOutcome =
  | Trapezoid
  | {
      readonly feasible: false;
      /** `too-short`: even at full acceleration throughout the one speed does not become the other. */
      readonly reason: 'end-speed-above-limit' | 'too-short';
    };

interface Move {
  readonly lengthMm: number;
  readonly entryMmPerS: number;
  readonly exitMmPerS: number;
  readonly limitMmPerS: number;
  /** Above 0. Limit and acceleration may be infinite. */
  readonly accelerationMmPerS2: number;
}

/** So that a length that just suffices is not refused for the rounding of whoever wrote it down. */
const rounding = 1e-9;

/** The profile of one straight move, or why there is none. Elementary kinematics: v² − v₀² = 2as. O(1). */
export const trapezoid = (move: Move): TrapezoidOutcome => {
  const { lengthMm, entryMmPerS: entry, exitMmPerS: exit, limitMmPerS: limit } = move;
  const acceleration = move.accelerationMmPerS2;
  if (Math.max(entry, exit) > limit * (1 + rounding)) {
    return { feasible: false, reason: 'end-speed-above-limit' };
  }
  if (Math.abs(exit * exit - entry * entry) > 2 * acceleration * lengthMm * (1 + rounding)) {
    return { feasible: false, reason: 'too-short' };
  }
  const peak = peakSpeed(lengthMm, entry, exit, limit, acceleration);
  const rising = stretch(entry, peak, acceleration);
  const falling = stretch(exit, peak, acceleration);
  const holds = peak >= limit || acceleration === Infinity;
  const left = holds ? Math.max(0, lengthMm - rising.lengthMm - falling.lengthMm) : 0;
  const levelMm = left > rounding * lengthMm ? left : 0;
  const level = { lengthMm: levelMm, seconds: levelMm / peak || 0 };
  return {
    feasible: true,
    shape: levelMm > 0 ? 'trapezoid' : 'triangle',
    peakMmPerS: peak,
    rising,
    level,
    falling,
    seconds: rising.seconds + level.seconds + falling.seconds,
  };
};

/** The highest speed that a move reaches: the limit, or where the rise from the one end meets the fall to the other. */
export const peakSpeed = (
  lengthMm: number,
  entryMmPerS: number,
  exitMmPerS: number,
  limitMmPerS: number,
  accelerationMmPerS2: number,
): number => {
  if (lengthMm === 0) return Math.max(entryMmPerS, exitMmPerS);
  const meeting =
    accelerationMmPerS2 * lengthMm + (entryMmPerS * entryMmPerS + exitMmPerS * exitMmPerS) / 2;
  return Math.max(entryMmPerS, exitMmPerS, Math.min(limitMmPerS, Math.sqrt(meeting)));
};

const stretch = (from: number, to: number, acceleration: number): Stretch =>
  acceleration === Infinity
    ? { seconds: 0, lengthMm: 0 }
    : {
        seconds: (to - from) / acceleration,
        lengthMm: ((to - from) * (to + from)) / (2 * acceleration),
      };
