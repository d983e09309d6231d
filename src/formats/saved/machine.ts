import { z } from 'zod';
import type { Bed, Machine, SlowCut } from '../../core/machine/machine.ts';
import type { MotionValues } from '../../core/motion/motionValues.ts';
import {
  between,
  currentMa,
  label,
  lengthMm,
  nominalW,
  pct,
  speedMmPerS,
  thicknessMm,
} from './bounds.ts';
import { bounds } from './limits.ts';
import { gcodeDialectShape } from './gcodeDialect.ts';

const tubePoints = z
  .array(z.strictObject({ powerPct: pct, currentMa }))
  .max(200)
  .refine((points) => points.every((p, i) => p.powerPct > (points[i - 1]?.powerPct ?? -1)), {
    message: 'power must rise from point to point',
  });

/** What one axis may jump by at a corner; a controller that stops dead at corners has 0. */
const jumpMmPerS = between(bounds.jumpMmPerS);
const accelerationMmPerS2 = between(bounds.accelerationMmPerS2);

const motion = z.strictObject({
  accelerationMmPerS2,
  corner: z.discriminatedUnion('rule', [
    z.strictObject({
      rule: z.literal('junction-deviation'),
      deviationMm: between(bounds.deviationMm),
    }),
    z.strictObject({ rule: z.literal('speed-jump'), xMmPerS: jumpMmPerS, yMmPerS: jumpMmPerS }),
  ]),
  travelSpeedMmPerS: speedMmPerS,
  travelAccelerationMmPerS2: accelerationMmPerS2.exactOptional(),
  lineDelayS: z.number().min(0).max(60).exactOptional(),
  jobDelayS: z.number().min(0).max(3600).exactOptional(),
  timeErrorPct: z.number().min(0).max(100).exactOptional(),
}) satisfies z.ZodType<MotionValues>;

export const bedShape = z.strictObject({
  widthMm: lengthMm,
  heightMm: lengthMm,
  gapMm: between(bounds.bedGapMm).exactOptional(),
}) satisfies z.ZodType<Bed>;

const slowCut = z.strictObject({
  material: label,
  thicknessMm,
  powerPct: pct.positive(),
  speedMmPerS,
}) satisfies z.ZodType<SlowCut>;

/** A machine as saved and sent. */
export const machineShape = z.strictObject({
  name: label.exactOptional(),
  nominalW: nominalW.exactOptional(),
  slowCut: slowCut.exactOptional(),
  strengthUnknown: z.literal(true).exactOptional(),
  ratedCurrentMa: currentMa.positive().exactOptional(),
  tubePoints: tubePoints.exactOptional(),
  maxPowerPct: pct.positive(),
  speedRangeMmPerS: z
    .tuple([speedMmPerS, speedMmPerS])
    .refine(([least, most]) => least < most, { message: 'the least speed must be below the most' }),
  powerRampStartMmPerS: jumpMmPerS.exactOptional(),
  motion: motion.exactOptional(),
  bed: bedShape.exactOptional(),
  gcode: gcodeDialectShape.exactOptional(),
}) satisfies z.ZodType<Machine>;
