import { refused, type Outcome, type Problem } from '../core/problem.ts';
import type { CliCode } from './codes.ts';

/** A refusal with one of this layer's codes. */
export const refuse = (code: CliCode, params: Problem['params'] = {}): Outcome<never> =>
  refused(code, params);
