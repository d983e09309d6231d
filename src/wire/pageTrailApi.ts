import type { Addressed } from './pageApi.ts';
import { trailAddresses } from './trailAddresses.ts';
import type { trailApi } from './trailApi.ts';

/** Routes of what was done to kept settings, for the page. */
export const pageTrailApi: {
  readonly [Name in keyof typeof trailApi]: Addressed<(typeof trailApi)[Name]>;
} = trailAddresses;
