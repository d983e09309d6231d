import { earlierProblems } from '../problems/earlier.ts';

/** Whether an answer says by this that it does not lean on earlier sheets. */
export const isEarlierCode = (code: string): boolean => Object.hasOwn(earlierProblems, code);
