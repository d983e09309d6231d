import { z } from 'zod';
import type { EarlierSheet } from '../core/study/earlierSheet.ts';
import type { EarlierCount } from '../core/study/historyOf.ts';
import { count, id, isoTime, label, lengthMm, thicknessMm } from '../formats/saved/bounds.ts';
import { gradeShape, spoiltShape } from '../formats/saved/readingEvent.ts';
import { settingShape } from '../formats/saved/setting.ts';

/** For which sheet earlier ones are sought. It need not be stored yet: a page may ask before it has sent what it began. */
export const historyQuery = z.strictObject({
  /** The study that asks, which is no history of its own. */
  except: id,
  /** The example's sheets teach the example only. */
  of: z.enum(['workshop', 'example']),
  material: label,
  thicknessMm: z.coerce.number().pipe(thicknessMm),
  machineId: id,
});

/** Study and batch, or card or order, in one name. */
const longName = z.string().max(250);

const earlierCell = z.strictObject({
  ...settingShape.shape,
  thicknessMm,
  shapeLengthMm: lengthMm.exactOptional(),
  grade: gradeShape.exactOptional(),
  spoilt: spoiltShape.exactOptional(),
});

const earlierSheet = z.strictObject({
  of: z.enum(['cards', 'order']),
  batch: longName,
  sheet: longName,
  lastReadAt: isoTime,
  beforeChange: z.literal(true).exactOptional(),
  /** Shapes that were cut alike and ended alike, and how many of them. */
  cuts: z.array(z.strictObject({ cell: earlierCell, count })),
}) satisfies z.ZodType<EarlierSheet>;

/** The last read first. */
export const historyReply = z.strictObject({ sheets: z.array(earlierSheet) });

/** How much of earlier sheets stands behind an answer. */
export const earlierCount = z.strictObject({
  cells: z.number().int(),
  sheets: z.number().int(),
  /** Parts of orders. */
  parts: z.number().int(),
  orders: z.number().int(),
}) satisfies z.ZodType<EarlierCount>;

/** Whether an answer is to lean on earlier sheets. Absent: it is. */
export const earlierSheetsWish = {
  earlierSheets: z.enum(['with', 'without']).exactOptional(),
};
