import { z } from 'zod';

import type { CornerRule } from '../../core/motion/motionValues.ts';
import { cornerSpeed, turnRad } from '../../core/motion/cornerSpeed.ts';
import { planPath } from '../../core/motion/planPath.ts';
import { trapezoid } from '../../core/motion/trapezoid.ts';
import type { Point } from '../../core/path/point.ts';
import { byKind } from './byKind.ts';

/** A limit that may be infinite, which JSON can only say as text. */
const limit = z.union([
  z.number().nonnegative(),
  z.literal('Infinity').transform(() => Number.POSITIVE_INFINITY),
]);
const accel = limit.refine((value) => value > 0, { message: 'must be more than 0' });
const axisSpeedJump = z.object({ x: limit, y: limit });
const point = z.tuple([z.number(), z.number()]);

const profile = z
  .object({
    distance: z.number().nonnegative(),
    vStart: limit,
    vEnd: limit,
    vMax: limit,
    accel,
  })
  .transform((input) => {
    const found = trapezoid({
      lengthMm: input.distance,
      entryMmPerS: input.vStart,
      exitMmPerS: input.vEnd,
      limitMmPerS: input.vMax,
      accelerationMmPerS2: input.accel,
    });
    if (!found.feasible) return found;
    const { rising, level, falling } = found;
    return {
      feasible: true,
      shape: found.shape,
      peakSpeed: found.peakMmPerS,
      tAccel: rising.seconds,
      tCruise: level.seconds,
      tDecel: falling.seconds,
      tTotal: found.seconds,
      dAccel: rising.lengthMm,
      dCruise: level.lengthMm,
      dDecel: falling.lengthMm,
    };
  });

const rules = z.object({ accel, junctionDeviation: limit, axisSpeedJump });

const rulesOf = ({
  junctionDeviation,
  axisSpeedJump: { x, y },
}: z.output<typeof rules>): Readonly<Record<'junctionDeviation' | 'axisJump', CornerRule>> => ({
  junctionDeviation: { rule: 'junction-deviation', deviationMm: junctionDeviation },
  axisJump: { rule: 'speed-jump', xMmPerS: x, yMmPerS: y },
});

const corner = rules
  .extend({ dirIn: point, dirOut: point, nominalSpeed: limit })
  .transform((input) => {
    const { junctionDeviation, axisJump } = rulesOf(input);
    const [into, out] = [unit(input.dirIn), unit(input.dirOut)];
    const speed = (rule: CornerRule): number => cornerSpeed(rule, input.accel, ...into, ...out);
    const [byDeviation, byJump] = [speed(junctionDeviation), speed(axisJump)];
    return {
      turnAngleDeg: (turnRad(...into, ...out) * 180) / Math.PI,
      junctionDeviationSpeedUncapped: byDeviation,
      junctionDeviationSpeed: Math.min(byDeviation, input.nominalSpeed),
      axisJumpSpeedUncapped: byJump,
      axisJumpSpeed: Math.min(byJump, input.nominalSpeed),
    };
  });

const unit = ([x, y]: Point): Point => {
  const length = Math.hypot(x, y);
  return [x / length, y / length];
};

const polyline = rules
  .extend({ points: z.array(point).min(2), speed: limit })
  .transform((input) => {
    const { junctionDeviation, axisJump } = rulesOf(input);
    const planned = (rule: CornerRule): object => {
      const plan = planPath(input.points, {
        speedMmPerS: input.speed,
        accelerationMmPerS2: input.accel,
        corner: rule,
      });
      return {
        length: plan.lengthMm,
        junctionLimits: [...plan.cornerMmPerS.slice(1, -1)],
        junctionSpeeds: [...plan.speedMmPerS.slice(1, -1)],
        segmentTimes: [...plan.segmentS],
        segmentPeakSpeeds: [...plan.peakMmPerS],
        totalTime: plan.seconds,
      };
    };
    return {
      junctionDeviation: planned(junctionDeviation),
      axisJump: planned(axisJump),
      fullStopTotalTime: fullStopSeconds(input.points, input.speed, input.accel),
    };
  });

/** At rest at every point, the straight ones too. */
const fullStopSeconds = (points: readonly Point[], speed: number, accel: number): number =>
  points.reduce((sum, [x, y], i) => {
    const [fromX, fromY] = points[i - 1] ?? [x, y];
    const move = trapezoid({
      lengthMm: Math.hypot(x - fromX, y - fromY),
      entryMmPerS: 0,
      exitMmPerS: 0,
      limitMmPerS: speed,
      accelerationMmPerS2: accel,
    });
    return sum + (move.feasible ? move.seconds : 0);
  }, 0);

/** Speed profiles, corners under both rules, and plans of whole lines. */
export const t15 = byKind({ trapezoid: profile, corner, polyline });
