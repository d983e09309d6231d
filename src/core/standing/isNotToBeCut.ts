import type { Standing } from './standing.ts';

const reasons: readonly string[] = [
  'not-to-be-cut',
  'above-its-machine',
  'above-its-tube',
  'beyond-its-speeds',
] satisfies readonly Standing['why']['code'][];

/** Nothing of a setting whose material is refused, or that its machine may not be set to, is shown as something to run. */
export const isNotToBeCut = ({ why }: Pick<Standing, 'why'>): boolean => reasons.includes(why.code);
