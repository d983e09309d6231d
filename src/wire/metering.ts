import { z } from 'zod';
import { id } from '../formats/saved/bounds.ts';
import { meteringShape } from '../formats/saved/metering.ts';

/** A problem with its remedy: what is asked of readings. */
const asked = z.strictObject({ code: z.string(), message: z.string(), remedy: z.string() });

export const byTwoMeterings = z.strictObject({ id, before: id });

const banded = z.strictObject({
  value: z.number(),
  low: z.number(),
  /** Absent: above what was read, nobody knows how far. */
  high: z.number().exactOptional(),
});

/** What one metering says; bands of 95 %. */
export const meteringReply = z.strictObject({
  metering: meteringShape,
  /** Absent: the readings make no curve, for this reason. */
  says: z
    .strictObject({
      /** Absent: no reading found it dark. */
      darkAtPct: z.number().exactOptional(),
      firesAtPct: z.number(),
      /** Scatter of one reading, where it was taken from, and the degrees of freedom behind it. */
      noise: z.strictObject({
        sdMa: z.number(),
        degrees: z.number(),
        from: z.enum(['repeats', 'neighbours', 'assumed']),
      }),
      lines: z.array(
        z.strictObject({
          powerPct: z.number(),
          currentMa: z.number(),
          lowMa: z.number(),
          highMa: z.number(),
          ratedPct: z.number().exactOptional(),
        }),
      ),
      /** Absent: no rated current. Without `at` the readings do not reach it. */
      rated: z.strictObject({ at: banded.exactOptional(), keepToPct: z.number() }).exactOptional(),
      remarks: z.array(asked),
    })
    .exactOptional(),
  reason: asked.exactOptional(),
});

export const compareQuery = z.strictObject({
  /** Do parts still come out as they did? */
  cuts: z.enum(['as-before', 'weaker', 'unsaid']).exactOptional(),
});

/** A later metering against an earlier one. */
export const compareReply = z.strictObject({
  how: z.enum(['lower', 'higher', 'bent', 'fires-later', 'fires-sooner', 'same']),
  /** The later current in per cent of the earlier, with a band of 97.5 %. */
  levelPct: z.number(),
  lowPct: z.number(),
  highPct: z.number(),
  chanceOfLevel: z.number(),
  chanceOfShape: z.number(),
  /** Where the two differ most. */
  most: z.strictObject({ powerPct: z.number(), beforeMa: z.number(), nowMa: z.number() }),
  at: z.enum(['current', 'light', 'nothing', 'cuts-first', 'read-again']),
  message: z.string(),
  verdict: z.string(),
  /** Cheapest first. */
  suspects: z.array(z.strictObject({ name: z.string(), how: z.string() })),
  remarks: z.array(asked),
});
