import { z } from 'zod';

import { centredDiscrepancy } from '../../num/centredDiscrepancy.ts';
import { halton } from '../../num/halton.ts';
import { sobol } from '../../num/sobol.ts';
import type { Answerer } from './referenceFile.ts';

const sequence = z.discriminatedUnion('sequence', [
  z
    .object({
      sequence: z.literal('sobol'),
      dimensions: z.int().min(1),
      points: z.int().min(0),
      skip: z.int().default(0),
    })
    .transform(({ points, dimensions, skip }) => ({ points: sobol(points, dimensions, { skip }) })),
  z
    .object({
      sequence: z.literal('halton'),
      bases: z.array(z.int().min(2)),
      points: z.int().min(0),
      skip: z.int().default(0),
    })
    .transform(({ points, bases, skip }) => ({ points: halton(points, bases, { skip }) })),
]);

const discrepancy = z
  .object({ n: z.array(z.int().min(1)) })
  .transform(({ n }) => ({ value: n.map((count) => centredDiscrepancy(sobol(count, 2))) }));

/** Evenly spread points, and how even. */
export const t18: Answerer = (input) => {
  if (input['kind'] === 'discrepancy') return discrepancy.parse(input);
  const isKnown = input['sequence'] === 'sobol' || input['sequence'] === 'halton';
  return isKnown ? sequence.parse(input) : undefined;
};
