import type { Problem } from '../core/problem.ts';
import type { StoreCode } from './codes.ts';

/**
 * The store cannot do its work. Thrown, since no use-case can mend it; the program and the server turn it into words
 * at their border.
 */
export class StoreError extends Error {
  readonly problem: Problem;

  constructor(code: StoreCode, params: Problem['params'], cause?: unknown) {
    super(`${code} ${JSON.stringify(params)}`, { cause });
    this.name = 'StoreError';
    this.problem = { code, params };
  }
}
