import { z } from 'zod';

import type { BinaryRow } from '../../num/separation.ts';

export const numbers = z.array(z.number());
export const linkName = z.enum(['logit', 'probit', 'cloglog']);

/** Rows with a constant and the given covariates; without `n` each row is one trial. */
export const binaryRows = (
  covariates: readonly (readonly number[])[],
  y: readonly number[],
  n?: readonly number[],
): readonly BinaryRow[] =>
  y.map((successes, i) => ({
    x: [1, ...covariates.map((column) => column[i] ?? NaN)],
    trials: n?.[i] ?? 1,
    successes,
  }));

/** One standard error a parameter. */
export const standardErrors = (covariance: readonly (readonly number[])[]): readonly number[] =>
  covariance.map((row, i) => Math.sqrt(row[i] ?? NaN));
