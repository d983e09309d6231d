import type { Problem } from '../core/problem.ts';

/** What an error says itself that a person should read, such as one from the store. */
export const carriedProblem = (thrown: unknown): Problem | undefined => {
  if (!(thrown instanceof Error) || !('problem' in thrown)) return undefined;
  const { problem } = thrown;
  const isProblem =
    typeof problem === 'object' && problem !== null && 'code' in problem && 'params' in problem;
  return isProblem ? (problem as Problem) : undefined;
};
