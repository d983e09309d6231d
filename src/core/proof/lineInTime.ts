import { pieceAt, type SpeedAlong } from '../motion/speedAlong.ts';
import type { BeamWork } from './beamWork.ts';

/** What passes over a stretch of a line. */
export interface Passed {
  readonly lengthMm: number;
  readonly seconds: number;
  /** Time weighted with the share of full power: seconds of full power that would do the same. */
  readonly workS: number;
}

/** A planned line with what the head and the beam have done by each place of it. */
export interface LineInTime {
  readonly speeds: SpeedAlong;
  readonly lengthMm: number;
  /**
   * From one place to another, in mm from its start. On a line that loops a place before its start is one before its end:
   * the two meet there. Else what sticks out beyond the ends is cut off.
   */
  readonly over: (fromMm: number, toMm: number) => Passed;
}

/** O(knots) once, O(log knots) a stretch. */
export const lineInTime = (speeds: SpeedAlong, work: BeamWork, loops: boolean): LineInTime => {
  const { atMm, atS, speedMmPerS, lengthMm, seconds } = speeds;
  const workS = new Float64Array(atMm.length);
  for (let i = 0; i + 1 < atMm.length; i += 1) {
    const mean = work.meanShare(speedMmPerS[i] ?? NaN, speedMmPerS[i + 1] ?? NaN);
    workS[i + 1] = (workS[i] ?? NaN) + ((atS[i + 1] ?? NaN) - (atS[i] ?? NaN)) * mean;
  }
  const wholeWorkS = workS.at(-1) ?? 0;
  let [reachedS, reachedWorkS] = [0, 0];
  /** Sets the two figures at a place within the line. */
  const reach = (mm: number): void => {
    const i = pieceAt(atMm, mm);
    const [from, to] = [atMm[i] ?? NaN, atMm[i + 1] ?? NaN];
    const [v0, v1] = [speedMmPerS[i] ?? NaN, speedMmPerS[i + 1] ?? NaN];
    const share = to > from ? Math.min(1, Math.max(0, (mm - from) / (to - from))) : 1;
    const speed = Math.sqrt(v0 * v0 + share * (v1 * v1 - v0 * v0));
    const pieceS = (atS[i + 1] ?? NaN) - (atS[i] ?? NaN);
    const gone = pieceS * (v0 === v1 ? share : (speed - v0) / (v1 - v0));
    reachedS = (atS[i] ?? NaN) + gone;
    reachedWorkS = (workS[i] ?? NaN) + gone * work.meanShare(v0, speed);
  };
  const within = (fromMm: number, toMm: number): Passed => {
    reach(fromMm);
    const [fromS, fromWorkS] = [reachedS, reachedWorkS];
    reach(toMm);
    return {
      lengthMm: toMm - fromMm,
      seconds: reachedS - fromS,
      workS: reachedWorkS - fromWorkS,
    };
  };
  return {
    speeds,
    lengthMm,
    over: (fromMm, toMm) => {
      if (fromMm >= 0 && toMm <= lengthMm) return within(fromMm, toMm);
      if (!loops) return within(Math.max(0, fromMm), Math.min(lengthMm, toMm));
      if (toMm - fromMm >= lengthMm) return { lengthMm, seconds, workS: wholeWorkS };
      const [before, after] =
        fromMm < 0
          ? [within(lengthMm + fromMm, lengthMm), within(0, Math.max(0, toMm))]
          : [within(Math.min(fromMm, lengthMm), lengthMm), within(0, toMm - lengthMm)];
      return {
        lengthMm: before.lengthMm + after.lengthMm,
        seconds: before.seconds + after.seconds,
        workS: before.workS + after.workS,
      };
    },
  };
};
