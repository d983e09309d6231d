import type { CornerRule } from './motionValues.ts';

/** Below this change of direction (as the length of the difference of unit vectors) a path runs straight on. */
const straightOn = 1e-11;

/**
 * The highest speed at which a rule lets the head round a corner between two unit directions, in mm/s: Infinity straight
 * on; 0 on a reversal under junction deviation. Does not know of the speed that is set.
 *
 * Junction deviation: v² = a·δ·s/(1 − s) with s the sine of half the angle between the two legs. s is half the length of
 * the sum of the directions and √(1 − s²) half that of their difference, so that s/(1 − s) = s(1 + s)/c² loses no digits
 * at either end. O(1).
 */
export const cornerSpeed = (
  rule: CornerRule,
  accelerationMmPerS2: number,
  inX: number,
  inY: number,
  outX: number,
  outY: number,
): number => {
  const [turnX, turnY] = [outX - inX, outY - inY];
  const turn = Math.sqrt(turnX * turnX + turnY * turnY);
  if (turn < straightOn) return Infinity;
  switch (rule.rule) {
    case 'junction-deviation': {
      const [sumX, sumY] = [inX + outX, inY + outY];
      const s = Math.sqrt(sumX * sumX + sumY * sumY) / 2;
      if (s === 0 || rule.deviationMm === 0) return 0;
      const c = turn / 2;
      return Math.sqrt(accelerationMmPerS2 * rule.deviationMm * s * (1 + s)) / c;
    }
    case 'speed-jump':
      return Math.min(jumpLimit(rule.xMmPerS, turnX), jumpLimit(rule.yMmPerS, turnY));
  }
};

const jumpLimit = (jumpMmPerS: number, turn: number): number =>
  turn === 0 ? Infinity : jumpMmPerS / Math.abs(turn);

/** How far the path turns between two unit directions, in radians: 0 straight on, π on a reversal. Exact at both ends. */
export const turnRad = (inX: number, inY: number, outX: number, outY: number): number =>
  2 * Math.atan2(Math.hypot(outX - inX, outY - inY), Math.hypot(outX + inX, outY + inY));
