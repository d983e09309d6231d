import { z } from 'zod';
import { gradeShape } from './saved/readingEvent.ts';
import type { Outcome } from '../core/problem.ts';
import type { Grade } from '../core/reading/grade.ts';
import { parseWith } from './border.ts';

/** A photographed card with what a person found on it: docs/formats/photo.md. Files by their names in the same folder. */
export interface PhotoSetFile {
  readonly kind: 'throughcut-photos';
  readonly version: 1;
  readonly card: string;
  readonly front: string;
  readonly back?: string | undefined;
  readonly grades: Readonly<Record<string, Grade>>;
}

const fileName = z
  .string()
  .min(1)
  .max(200)
  .regex(/^[^/\\]+$/);

const photoSetShape = z.strictObject({
  kind: z.literal('throughcut-photos'),
  version: z.literal(1),
  card: fileName,
  front: fileName,
  back: fileName.optional(),
  grades: z.record(z.string().max(20), gradeShape),
}) satisfies z.ZodType<PhotoSetFile>;

export const parsePhotoSetFile = (json: unknown): Outcome<PhotoSetFile> =>
  parseWith(photoSetShape, json);

/** Whether a JSON file says that it is one of these: cards lie in the same folder. */
export const isPhotoSetFile = (json: unknown): boolean =>
  typeof json === 'object' && json !== null && 'kind' in json && json.kind === 'throughcut-photos';
