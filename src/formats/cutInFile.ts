import { z } from 'zod';
import { cornerRule, cornersWithin, settingShape } from './saved/setting.ts';

/** A setting that fires, as a request for a card or a strip names it: passes may be left out. */
export const cutInFile = z
  .strictObject({
    ...settingShape.shape,
    powerPct: settingShape.shape.powerPct.positive(),
    passes: settingShape.shape.passes.default(1),
  })
  .refine(cornersWithin, cornerRule);
