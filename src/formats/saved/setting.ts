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

/** Held wherever a setting is read, whatever else stands beside it: {@link cornerRule} where it is not. */
export const cornersWithin = ({
  powerPct,
  minPowerPct = 0,
}: {
  readonly powerPct: number;
  readonly minPowerPct?: number;
}): boolean => minPowerPct <= powerPct;

export const cornerRule = {
  path: ['minPowerPct'],
  message: 'corner power may not exceed power at full speed',
};

/** A setting as saved and sent. */
export const settingShape = z
  .strictObject({
    powerPct: pct,
    minPowerPct: pct.exactOptional(),
    speedMmPerS,
    passes,
    air: airShape.exactOptional(),
  })
  .refine(cornersWithin, cornerRule) satisfies z.ZodType<Setting>;
