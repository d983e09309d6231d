import { z } from 'zod';

import { referencePosterior } from '../../core/cutmodel/referencePosterior.ts';
import type { Tolerance } from './compare.ts';
import type { Answerer } from './referenceFile.ts';

const normal = z.object({ mean: z.number(), sd: z.number().positive() });
const place = { P: z.number().positive(), v: z.number().positive() };

const card = z.object({
  P0: z.number().positive(),
  prior: z.object({ a: normal, b: normal, lnSigma: normal, lnDelta: normal.exactOptional() }),
  deltaFixed: z.number().positive().exactOptional(),
  observations: z.array(z.object({ ...place, grade: z.enum(['out', 'in', 'hangs', 'not']) })),
  query: z.object({
    P: z.number().positive(),
    target: z.number().gt(0).lt(1),
    cells: z.array(z.object(place)),
  }),
});

/** Posterior summaries of small cards. */
export const t06: Answerer = (input) => referencePosterior(card.parse(input));

const spread = z.looseObject({ sd: z.number() });

/**
 * The file’s own tolerance is what its quadrature is good for. An approximate method is judged at 2 % of the posterior’s
 * standard deviation, as the file says; a probability and a logarithm of the evidence at 0.01.
 */
export const t06Tolerance = (expected: unknown): Tolerance | undefined => {
  const summaries = z.record(z.string(), z.unknown()).safeParse(expected);
  if (!summaries.success) return undefined;
  const shares = Object.entries(summaries.data).map(([key, value]) => {
    const summary = spread.safeParse(value);
    return [key, summary.success ? 0.02 * summary.data.sd : 0.01];
  });
  return { absolute: Object.fromEntries(shares) as Readonly<Record<string, unknown>> };
};
