import { z } from 'zod';
import type { Machine } from '../../core/machine/machine.ts';
import { currentMa, label, lengthMm, pct, speedMmPerS } from './bounds.ts';

const tubePoints = z
  .array(z.strictObject({ powerPct: pct, currentMa }))
  .max(200)
  .refine((points) => points.every((p, i) => p.powerPct > (points[i - 1]?.powerPct ?? -1)), {
    message: 'power must rise from point to point',
  });

/** A machine as saved and sent. */
export const machineShape = z.strictObject({
  name: label.exactOptional(),
  ratedCurrentMa: currentMa.positive().exactOptional(),
  tubePoints: tubePoints.exactOptional(),
  maxPowerPct: pct.positive(),
  speedRangeMmPerS: z
    .tuple([speedMmPerS, speedMmPerS])
    .refine(([least, most]) => least < most, { message: 'the least speed must be below the most' }),
  powerRampStartMmPerS: z.number().min(0).max(5000).exactOptional(),
  bed: z
    .strictObject({
      widthMm: lengthMm,
      heightMm: lengthMm,
      gapMm: z.number().min(0).max(1000).exactOptional(),
    })
    .exactOptional(),
}) satisfies z.ZodType<Machine>;
