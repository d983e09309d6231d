import { z } from 'zod';
import type { GcodeDialect } from '../../core/dialect/gcodeDialect.ts';
import { lightsBeam } from '../../core/dialect/ownLines.ts';

/**
 * One line of G-code as the user wrote it; a `%` or a line break would begin something else. It may not light the beam:
 * what is cut is in the card alone, and a machine may come from someone else's file. What else such a line may not do
 * (`ownLineProblem`) is held where a file is made, so that a machine that was kept with it can still be read.
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
