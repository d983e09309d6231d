import { z } from 'zod';
import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import { authorShape, code, count, id, isoTime, label, note, thicknessMm } from './bounds.ts';
import { materialKnownShape } from './materialKnown.ts';
import { settingShape } from './setting.ts';
import { aimShape, promiseShape } from './study.ts';

/** A proven setting as saved and sent. */
export const provenSettingShape = z.strictObject({
  version: z.literal(1),
  id,
  code,
  isExample: z.boolean(),
  keptAt: isoTime,
  setting: settingShape,
  aim: aimShape,
  promise: promiseShape,
  outOf100Mean: z.number().min(0).max(100),
  surePct: z.number().min(0).max(100),
  holdsFor: z.strictObject({
    machineId: id.exactOptional(),
    machine: label.exactOptional(),
    material: label,
    materialKnown: materialKnownShape.exactOptional(),
    nominalThicknessMm: thicknessMm,
    measuredThicknessMm: thicknessMm.exactOptional(),
    batch: label.exactOptional(),
    sheet: label.exactOptional(),
  }),
  cameFrom: z.strictObject({
    studyId: id,
    cardCodes: z.array(code).max(1000),
    cellCount: count,
    partsTallied: count,
    habit: z.boolean(),
  }),
  personsChoice: note.exactOptional(),
  note: note.exactOptional(),
  ...authorShape,
}) satisfies z.ZodType<ProvenSetting>;
