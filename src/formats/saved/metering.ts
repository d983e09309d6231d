import { z } from 'zod';
import type { Metering } from '../../core/metering/metering.ts';
import { currentMa, id, isoTime, label, note, pct, waterC } from './bounds.ts';

/** A metering as saved and sent: its readings in the order in which they were read, repeats and all. */
export const meteringShape = z.strictObject({
  version: z.literal(1),
  id,
  at: isoTime,
  isExample: z.literal(true).exactOptional(),
  machineId: id.exactOptional(),
  machine: label.exactOptional(),
  ratedCurrentMa: currentMa.positive().exactOptional(),
  readings: z
    .array(z.strictObject({ powerPct: pct, currentMa }))
    .min(1)
    .max(500),
  waterC: waterC.exactOptional(),
  note: note.exactOptional(),
}) satisfies z.ZodType<Metering>;
