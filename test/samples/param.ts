import type { RawProblem } from '../../src/core/problem.ts';

/** What a problem of any code carries under this name. */
export const param = (
  problem: RawProblem | null | undefined,
  name: string,
): string | number | undefined => problem?.params[name];
