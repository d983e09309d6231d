import { z } from 'zod';
import type { GcodeDialect } from '../../core/dialect/gcodeDialect.ts';

/** M3 or M4 in any way of writing them, outside comments. */
const lightsBeam = (line: string): boolean =>
  /m0*[34](?:\.0*)?(?![\d.])/i.test(line.replace(/\([^)]*\)|;.*$/g, '').replace(/\s/g, ''));

/**
 * One line of G-code as the user wrote it; a `%` or a line break would begin something else. It may not light the beam:
 * what is cut is in the card alone, and a machine may come from someone else's file.
 */
const ownLine = z
  .string()
  .max(256)
  .regex(/^[^%\p{Cc}]*$/u, 'one line without % and control characters')
  .refine((line) => !lightsBeam(line), {
    message: 'a line of your own may not light the beam (M3, M4)',
  });

/** A dialect as saved and sent. */
export const gcodeDialectShape = z.strictObject({
  opening: z.array(ownLine).max(100),
  closing: z.array(ownLine).max(100),
  sAtFullPower: z.number().positive().max(1_000_000),
  power: z.enum(['constant', 'speed-following']),
  airOn: z.enum(['M7', 'M8']),
}) satisfies z.ZodType<GcodeDialect>;
