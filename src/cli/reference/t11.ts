import { z } from 'zod';

import {
  combineUncertainty,
  coverageFactor,
  limitsUncertainty,
  meanOfReadings,
} from '../../num/uncertainty.ts';
import { numbers } from './binaryRows.ts';
import type { Answerer } from './referenceFile.ts';

const degrees = z.union([z.number().positive(), z.literal('Infinity').transform(() => Infinity)]);

const budget = z
  .object({
    components: z.array(z.object({ sensitivity: z.number(), u: z.number().min(0), dof: degrees })),
  })
  .transform(({ components }) => {
    const result = combineUncertainty(
      components.map(({ dof, ...component }) => ({ ...component, degrees: dof })),
    );
    const { contributions, combined, effectiveDegrees } = result;
    const expanded = ['0.95', '0.99', '0.9545'].map((coverage) => {
      const kTruncatedDof = coverageFactor(Number(coverage), effectiveDegrees);
      const kRealDof = coverageFactor(Number(coverage), effectiveDegrees, { wholeDegrees: false });
      return [coverage, { kTruncatedDof, U: kTruncatedDof * combined, kRealDof }] as const;
    });
    return {
      contributions,
      uc: combined,
      nuEff: effectiveDegrees,
      nuEffTruncated: Math.floor(effectiveDegrees),
      expanded: Object.fromEntries(expanded),
    };
  });

const limits = z
  .object({
    distribution: z.enum(['rectangular', 'triangular', 'arcsine']),
    halfWidth: z.number().min(0),
  })
  .transform(({ distribution, halfWidth }) => ({ u: limitsUncertainty(halfWidth, distribution) }));

const readings = z.object({ readings: numbers.min(2) }).transform((input) => {
  const found = meanOfReadings(input.readings);
  return { mean: found?.mean, s: found?.sd, u: found?.u, dof: found?.degrees };
});

/** Measurement uncertainty by the GUM. */
export const t11: Answerer = (input) => {
  if ('components' in input) return budget.parse(input);
  if ('distribution' in input) return limits.parse(input);
  return 'readings' in input ? readings.parse(input) : undefined;
};
