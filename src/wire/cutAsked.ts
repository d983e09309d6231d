import { z } from 'zod';
import { id, label, passes, pct, speedMmPerS } from '../formats/saved/bounds.ts';
import { bounds } from '../formats/saved/limits.ts';
import { unitsWanted } from './unitsWanted.ts';

const figure = z.coerce.number();

/** The cut beside which a card or a strip is asked for, as fields of an address. Whoever takes them holds them to the rule of corners. */
export const cutAsked = {
  material: label,
  /** A person has looked at what it is, where its name leaves that open. */
  materialKnown: z.enum(['true', 'false']).exactOptional(),
  powerPct: figure.pipe(pct.positive()),
  minPowerPct: figure.pipe(pct).exactOptional(),
  speedMmPerS: figure.pipe(speedMmPerS),
  passes: figure.pipe(passes).exactOptional(),
  /** `off`, `pump`, or a pressure in kPa. */
  air: z
    .union([z.enum(['off', 'pump']), figure.pipe(z.number().min(0).max(bounds.airKPa[1]))])
    .exactOptional(),
  /** Whose machine's limits and G-code count; absent: the machine of the sheet on the bed. */
  machineId: id.exactOptional(),
  units: unitsWanted,
};
