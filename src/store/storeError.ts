import type { Problem, ProblemOf } from '../core/problem.ts';
import type { StoreCode } from '../core/problems/store.ts';

/**
 * The store cannot do its work. Thrown, since no use-case can mend it; the program and the server turn it into words
 * at their border.
 */
export class StoreError extends Error {
  readonly problem: Problem;

  constructor(problem: ProblemOf<StoreCode>, cause?: unknown) {
    super(`${problem.code} ${JSON.stringify(problem.params)}`, { cause });
    this.name = 'StoreError';
    this.problem = problem;
  }
}
