import { z } from 'zod';
import type { BedTest } from '../../core/bed/bedTest.ts';
import { bedPlaces } from '../../core/bed/place.ts';
import { id, isoTime, label, note } from './bounds.ts';
import { bedShape } from './machine.ts';
import { gradeShape } from './readingEvent.ts';
import { settingShape } from './setting.ts';

const lnSpeed = z.number().positive().max(5);

/** A reading of the four corners as saved and sent. */
export const bedTestShape = z.strictObject({
  version: z.literal(1),
  id,
  at: isoTime,
  isExample: z.literal(true).exactOptional(),
  machineId: id.exactOptional(),
  machine: label.exactOptional(),
  bed: bedShape,
  setting: settingShape,
  scatter: z.strictObject({ sigma: lnSpeed, hangBand: lnSpeed }),
  cells: z
    .array(z.strictObject({ id, place: z.enum(bedPlaces), grade: gradeShape }))
    .min(1)
    .max(400),
  note: note.exactOptional(),
}) satisfies z.ZodType<BedTest>;
