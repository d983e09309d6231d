import type { Problem } from '../core/problem.ts';

/** What can be the matter with the place where things are kept, before any use-case is asked. */
export const storeCodes = [
  'store-newer-than-program',
  'store-not-readable',
  'store-not-writable',
  'store-not-ours',
  'store-not-there',
  'store-busy',
  'store-row-unreadable',
] as const;

export type StoreCode = (typeof storeCodes)[number];

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
