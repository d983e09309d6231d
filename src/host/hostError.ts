import type { Problem, ProblemOf } from '../core/problem.ts';
import type { HostCode } from '../core/problems/host.ts';

/** A problem of a file. */
export type FileProblem = ProblemOf<HostCode>;

/** This computer stands against it. Thrown where no caller can go on; the program turns it into words at its border. */
export class HostError extends Error {
  readonly problem: Problem;

  constructor(problem: FileProblem, cause?: unknown) {
    super(`${problem.code} ${JSON.stringify(problem.params)}`, { cause });
    this.name = 'HostError';
    this.problem = problem;
  }
}
