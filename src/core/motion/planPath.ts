import type { CornerRule } from './motionValues.ts';
import type { Polyline } from '../path/polyline.ts';
import { cornerSpeed } from './cornerSpeed.ts';
import { peakSpeed } from './trapezoid.ts';

/** What a controller keeps to along one line. */
export interface MotionLimits {
  readonly speedMmPerS: number;
  readonly accelerationMmPerS2: number;
  readonly corner: CornerRule;
}

/** One line from rest to rest. Segment i runs from point i to point i + 1. */
export interface PathPlan {
  readonly limits: MotionLimits;
  readonly lengthMm: number;
  readonly seconds: number;
  /** By segment; 0 where a point repeats the one before. */
  readonly segmentMm: Float64Array;
  readonly segmentS: Float64Array;
  readonly peakMmPerS: Float64Array;
  /** By point: what the corner there allows, never above the set speed; 0 at both ends. */
  readonly cornerMmPerS: Float64Array;
  /** By point: the speed at which it is passed. */
  readonly speedMmPerS: Float64Array;
}

/** Points nearer than this to the last one are the same point: their direction would be rounding. */
const samePointMm = 1e-6;

/**
 * Plans a line: at every corner the highest speed that the corner's rule and the acceleration over the segments before
 * and after allow, by one sweep forward and one back; between corners trapezoids. The path speed is the same before and
 * after a corner. O(points) in time and memory; 100 000 segments take some 20 ms.
 */
export const planPath = (points: Polyline, limits: MotionLimits): PathPlan => {
  const count = Math.max(0, points.length - 1);
  const { segmentMm, cornerMmPerS } = measure(points, count, limits);
  const speedMmPerS = Float64Array.from(cornerMmPerS);
  const { accelerationMmPerS2: a } = limits;
  for (let i = 0; i < count; i += 1) {
    speedMmPerS[i + 1] = reachable(
      speedMmPerS[i] ?? NaN,
      speedMmPerS[i + 1] ?? NaN,
      segmentMm[i] ?? NaN,
      a,
    );
  }
  for (let i = count - 1; i >= 0; i -= 1) {
    speedMmPerS[i] = reachable(
      speedMmPerS[i + 1] ?? NaN,
      speedMmPerS[i] ?? NaN,
      segmentMm[i] ?? NaN,
      a,
    );
  }
  return { limits, segmentMm, cornerMmPerS, speedMmPerS, ...timed(segmentMm, speedMmPerS, limits) };
};

/** The speed at the far end of a segment: what is wished for, unless acceleration from the near end falls short of it. */
const reachable = (
  near: number,
  wished: number,
  lengthMm: number,
  acceleration: number,
): number => {
  if (wished <= near) return wished;
  if (lengthMm === 0) return near;
  return Math.min(wished, Math.sqrt(near * near + 2 * acceleration * lengthMm));
};

/** Lengths of segments and speeds allowed at corners. A repeated point is no corner of its own. */
const measure = (
  points: Polyline,
  count: number,
  { speedMmPerS, accelerationMmPerS2, corner }: MotionLimits,
): Pick<PathPlan, 'segmentMm' | 'cornerMmPerS'> => {
  const segmentMm = new Float64Array(count);
  const cornerMmPerS = new Float64Array(count + 1).fill(speedMmPerS);
  cornerMmPerS[0] = 0;
  cornerMmPerS[count] = 0;
  let [atX, atY] = points[0] ?? [0, 0];
  // The direction in which the last segment that has a length ran.
  let [inX, inY] = [0, 0];
  for (let i = 0; i < count; i += 1) {
    const [x, y] = points[i + 1] ?? [atX, atY];
    const [dx, dy] = [x - atX, y - atY];
    const length = Math.sqrt(dx * dx + dy * dy);
    if (length < samePointMm) continue;
    segmentMm[i] = length;
    const [outX, outY] = [dx / length, dy / length];
    if (i > 0 && (inX !== 0 || inY !== 0)) {
      const allowed = cornerSpeed(corner, accelerationMmPerS2, inX, inY, outX, outY);
      cornerMmPerS[i] = Math.min(speedMmPerS, allowed);
    }
    [atX, atY, inX, inY] = [x, y, outX, outY];
  }
  return { segmentMm, cornerMmPerS };
};

const timed = (
  segmentMm: Float64Array,
  speedMmPerS: Float64Array,
  limits: MotionLimits,
): Pick<PathPlan, 'lengthMm' | 'seconds' | 'segmentS' | 'peakMmPerS'> => {
  const segmentS = new Float64Array(segmentMm.length);
  const peakMmPerS = new Float64Array(segmentMm.length);
  let [lengthMm, seconds] = [0, 0];
  for (let i = 0; i < segmentMm.length; i += 1) {
    const length = segmentMm[i] ?? NaN;
    const [entry, exit] = [speedMmPerS[i] ?? NaN, speedMmPerS[i + 1] ?? NaN];
    const peak = peakSpeed(length, entry, exit, limits.speedMmPerS, limits.accelerationMmPerS2);
    const taken = secondsOver(length, entry, exit, peak, limits.accelerationMmPerS2);
    peakMmPerS[i] = peak;
    segmentS[i] = taken;
    lengthMm += length;
    seconds += taken;
  }
  return { lengthMm, seconds, segmentS, peakMmPerS };
};

/** Rise, level stretch and fall together. */
const secondsOver = (
  lengthMm: number,
  entry: number,
  exit: number,
  peak: number,
  acceleration: number,
): number => {
  if (lengthMm === 0) return 0;
  const changingMm = (2 * peak * peak - entry * entry - exit * exit) / (2 * acceleration);
  const levelMm = Math.max(0, lengthMm - (changingMm || 0));
  return ((2 * peak - entry - exit) / acceleration || 0) + levelMm / peak;
};
