import type { Problem } from '../problem.ts';

/** What can be the matter with readings of the meter, and what is asked of them. */
export const meterCodes = [
  'meter-plan-needs-rating',
  'meter-beyond-readings',
  'meter-between-dark-and-lit',
  'meter-current-not-reached',
  'meter-current-below-firing',
  'meter-reading-doubtful',
  'meter-reading-reversed',
  'meter-repeats-apart',
  'meter-drifts',
  'meter-flickers',
  'meter-fired-below-dark',
  'meter-above-rated',
  'meter-no-repeats',
  'meter-never-dark',
  'meter-wide-gap',
  'meter-water-warm',
  'meter-water-cold',
] as const;

export type MeterCode = (typeof meterCodes)[number];

/** A problem with one of these codes, so that a slip in a code does not compile. */
export type MeterProblem = Problem & { readonly code: MeterCode };
