import { refused, type Outcome, type Problem } from '../core/problem.ts';
import type { AppCode } from './codes.ts';

/** A refusal with one of this layer's codes. */
export const refuse = (code: AppCode, params: Problem['params'] = {}): Outcome<never> =>
  refused(code, params);
