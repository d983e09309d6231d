import type { ToldProblem } from '../../src/core/problem.ts';

/** What a problem of any code carries under this name. */
export const param = (
  problem: ToldProblem | null | undefined,
  name: string,
): string | number | undefined => problem?.params[name];
