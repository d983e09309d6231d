import { z } from 'zod';
import type { SettingChange } from '../../core/book/settingChange.ts';
import { authorShape, id, isoTime } from './bounds.ts';
import { provenSettingShape } from './provenSetting.ts';

/** A change of a kept setting, as saved. */
export const settingChangeShape = z.strictObject({
  version: z.literal(1),
  id,
  at: isoTime,
  settingId: id,
  before: provenSettingShape.exactOptional(),
  after: provenSettingShape.exactOptional(),
  undoes: id.exactOptional(),
  ...authorShape,
}) satisfies z.ZodType<SettingChange>;
