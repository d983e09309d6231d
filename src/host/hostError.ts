import type { Problem } from '../core/problem.ts';
import type { HostCode } from './codes.ts';

/** A problem of a file. */
export type FileProblem = Problem & { readonly code: HostCode };

/** This computer stands against it. Thrown where no caller can go on; the program turns it into words at its border. */
export class HostError extends Error {
  readonly problem: Problem;

  constructor(code: HostCode, params: Problem['params'], cause?: unknown) {
    super(`${code} ${JSON.stringify(params)}`, { cause });
    this.name = 'HostError';
    this.problem = { code, params };
  }

  /** The same of a problem that has its code already. */
  static of({ code, params }: FileProblem, cause: unknown): HostError {
    return new HostError(code, params, cause);
  }
}
