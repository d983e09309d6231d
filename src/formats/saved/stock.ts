import { z } from 'zod';
import type { Stock } from '../../core/stock/stock.ts';
import { label, note, thicknessMm } from './bounds.ts';
import { materialKnownShape } from './materialKnown.ts';

/** A stock as saved and sent. */
export const stockShape = z.strictObject({
  material: label,
  materialKnown: materialKnownShape.exactOptional(),
  nominalThicknessMm: thicknessMm,
  thicknessReadingsMm: z.array(thicknessMm).max(100),
  batch: label.exactOptional(),
  sheet: label.exactOptional(),
  note: note.exactOptional(),
}) satisfies z.ZodType<Stock>;
