import { z } from 'zod';
import type { Air } from '../../core/machine/air.ts';
import type { Setting } from '../../core/machine/setting.ts';
import { passes, pct, speedMmPerS } from './bounds.ts';
import { bounds } from './limits.ts';

export const airShape = z.union([
  z.literal('off'),
  z.literal('pump'),
  z.strictObject({ kPa: z.number().min(bounds.airKPa[0]).max(bounds.airKPa[1]) }),
]) satisfies z.ZodType<Air>;

/** A setting as saved and sent. */
export const settingShape = z
  .strictObject({
    powerPct: pct,
    minPowerPct: pct.exactOptional(),
    speedMmPerS,
    passes,
    air: airShape.exactOptional(),
  })
  .refine((s) => s.minPowerPct === undefined || s.minPowerPct <= s.powerPct, {
    path: ['minPowerPct'],
    message: 'corner power may not exceed power at full speed',
  }) satisfies z.ZodType<Setting>;
