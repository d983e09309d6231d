import type { MotionValues } from './motionValues.ts';
import { distanceMm, type Point } from '../path/point.ts';
import { isClosed, type Polyline } from '../path/polyline.ts';
import { planPath } from './planPath.ts';
import { trapezoid } from './trapezoid.ts';

/** One thing after the other that a job makes the machine do. */
export type JobMove =
  /** A line in one go, so often; the head goes to its first point by itself. */
  | {
      readonly kind: 'cut';
      readonly points: Polyline;
      readonly speedMmPerS: number;
      readonly passes: number;
    }
  /** Beam off, straight to a point; with a speed of its own where a program feeds without the beam. */
  | { readonly kind: 'travel'; readonly to: Point; readonly speedMmPerS?: number }
  | { readonly kind: 'wait'; readonly seconds: number };

/** Where the time goes, in seconds. */
export interface TimeGoes {
  /** All that is cut, at the speed that is set. */
  readonly cuttingS: number;
  /** More than that: slowing down for corners and ends, and speeding up again. */
  readonly cornersS: number;
  readonly travelS: number;
  /** Beam on and off, pauses, what a job costs before it begins. */
  readonly delaysS: number;
}

export interface JobTime extends TimeGoes {
  readonly seconds: number;
  readonly cutMm: number;
  readonly travelMm: number;
  /** Where the head stands at the end. */
  readonly at: Point;
}

/**
 * How long a machine takes over moves. Every line starts and ends at rest. A closed line in several passes is run round
 * again, an open one there and back; each pass costs the line's delay. The delay of the job itself is not in it: it is
 * added once, by {@link wholeJobTime}. O(points).
 */
export const jobTime = (
  moves: readonly JobMove[],
  motion: MotionValues,
  start: Point = [0, 0],
): JobTime => {
  let at = start;
  let [cuttingS, cornersS, travelS, delaysS, cutMm, travelMm] = [0, 0, 0, 0, 0, 0];
  const travel = (to: Point, speedMmPerS?: number): void => {
    const length = distanceMm(at, to);
    travelMm += length;
    travelS += travelSeconds(length, motion, speedMmPerS);
    at = to;
  };
  for (const move of moves) {
    switch (move.kind) {
      case 'wait':
        delaysS += move.seconds;
        break;
      case 'travel':
        travel(move.to, move.speedMmPerS);
        break;
      case 'cut': {
        travel(move.points[0] ?? at);
        const plan = planPath(move.points, {
          speedMmPerS: move.speedMmPerS,
          accelerationMmPerS2: motion.accelerationMmPerS2,
          corner: motion.corner,
        });
        const unhindered = plan.lengthMm / move.speedMmPerS;
        cuttingS += move.passes * unhindered;
        cornersS += move.passes * (plan.seconds - unhindered);
        delaysS += move.passes * (motion.lineDelayS ?? 0);
        cutMm += move.passes * plan.lengthMm;
        at = endOfLine(move.points, move.passes) ?? at;
      }
    }
  }
  const seconds = cuttingS + cornersS + travelS + delaysS;
  return { seconds, cuttingS, cornersS, travelS, delaysS, cutMm, travelMm, at };
};

/** The time of a job as a whole, with what the machine loses once a job. */
export const wholeJobTime = (
  moves: readonly JobMove[],
  motion: MotionValues,
  start?: Point,
): JobTime => {
  const found = jobTime(moves, motion, start);
  const once = motion.jobDelayS ?? 0;
  return { ...found, seconds: found.seconds + once, delaysS: found.delaysS + once };
};

/** From rest to rest, straight; with a speed of its own where a program feeds without the beam. */
export const travelSeconds = (
  lengthMm: number,
  motion: MotionValues,
  speedMmPerS?: number,
): number => {
  const rapid = speedMmPerS === undefined;
  const move = trapezoid({
    lengthMm,
    entryMmPerS: 0,
    exitMmPerS: 0,
    limitMmPerS: speedMmPerS ?? motion.travelSpeedMmPerS,
    accelerationMmPerS2: rapid
      ? (motion.travelAccelerationMmPerS2 ?? motion.accelerationMmPerS2)
      : motion.accelerationMmPerS2,
  });
  return move.feasible ? move.seconds : 0;
};

/** Where a line in so many passes leaves the head. */
export const endOfLine = (points: Polyline, passes: number): Point | undefined =>
  passes % 2 === 1 || isClosed(points) ? points.at(-1) : points[0];
