import type { Standing } from './standing.ts';

/** Nothing of a setting whose material is refused is shown as something to run. */
export const isNotToBeCut = ({ why }: Pick<Standing, 'why'>): boolean =>
  why.code === 'not-to-be-cut';
