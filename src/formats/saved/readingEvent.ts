import { z } from 'zod';
import { edgesOf } from '../../core/reading/edge.ts';
import type { ReadingEvent } from '../../core/reading/readingEvent.ts';
import { code, id, isoTime } from './bounds.ts';
import { settingShape } from './setting.ts';

export const gradeShape = z.enum(['out', 'hangs', 'stays']);
export const spoiltShape = z.enum(['glue-pocket', 'knot', 'clip', 'lifted', 'slat', 'welded-back']);

export const edgeShape = z.enum([...edgesOf.wood, ...edgesOf.acrylic]);
export const tapedShape = z.literal(true);

const common = { id, cardCode: code, at: isoTime };
const cell = z.string().min(1).max(8);

/** A reading event as saved and sent. */
export const readingEventShape = z.discriminatedUnion('kind', [
  z.strictObject({
    ...common,
    kind: z.literal('graded'),
    cell,
    grade: gradeShape,
    how: z.enum(['fell', 'pushed', 'knife']).exactOptional(),
    source: z.enum(['photo', 'photo-corrected']).exactOptional(),
  }),
  z.strictObject({ ...common, kind: z.literal('spoilt'), cell, reason: spoiltShape }),
  z.strictObject({
    ...common,
    kind: z.literal('edge'),
    cell,
    edge: edgeShape.nullable(),
    taped: tapedShape.exactOptional(),
  }),
  z.strictObject({ ...common, kind: z.literal('cleared'), cell }),
  z.strictObject({ ...common, kind: z.literal('as-cut'), cell, setting: settingShape }),
  z.strictObject({ ...common, kind: z.literal('undone'), eventId: id }),
]) satisfies z.ZodType<ReadingEvent>;
