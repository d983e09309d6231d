import { done, refused, type Outcome } from '../problem.ts';

/** In what a check strip is cut. */
export interface StripPlace {
  readonly of: 'new-batch' | 'reference';
  readonly batch?: string;
}

/** The batch that a check strip is of: the reference sheet's is the kept one, a new one needs a name of its own. */
export const stripBatch = (
  kept: string | undefined,
  { of, batch = '' }: StripPlace,
): Outcome<string | undefined> => {
  if (of === 'reference') return done(kept);
  const named = batch.trim();
  return named === '' || named.toLowerCase() === (kept ?? '').trim().toLowerCase()
    ? refused('strip-needs-batch', { kept: kept ?? '' })
    : done(named);
};
