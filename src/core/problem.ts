import type { AllProblems } from './problems/all.ts';
import type { ParamsIn } from './problems/param.ts';

export type ProblemCode = keyof AllProblems;

/** What a problem with this code carries: its figures and names, and nothing else. */
export type ParamsOf<Code extends ProblemCode> = ParamsIn<AllProblems[Code]>;

/**
 * One shape for what went wrong. `code` is looked up in the words layer, where a person's message and remedy live;
 * `params` fill the sentence. Codes and what they carry are listed by area in `problems/`.
 */
export type ProblemOf<Code extends ProblemCode> = Code extends ProblemCode
  ? { readonly code: Code; readonly params: ParamsOf<Code> }
  : never;

export type Problem = ProblemOf<ProblemCode>;

/** A problem as another program told it: its code may be one that this version does not know. */
export interface RawProblem {
  readonly code: string;
  readonly params: Readonly<Record<string, string | number>>;
}

/** What a caller may expect to go either way. Exceptions are kept for bugs. */
export type Outcome<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

export const done = <T>(value: T): Outcome<T> => ({ ok: true, value });

/** What comes after, where the first went well. */
export const andThen = <T, U>(first: Outcome<T>, next: (value: T) => Outcome<U>): Outcome<U> =>
  first.ok ? next(first.value) : first;

/** The params, left out where the code carries none. */
export type Carried<Code extends ProblemCode> =
  Record<string, never> extends ParamsOf<Code>
    ? [params?: ParamsOf<Code>]
    : [params: ParamsOf<Code>];

export const problemOf = <Code extends ProblemCode>(
  code: Code,
  ...[params]: Carried<Code>
): ProblemOf<Code> => ({ code, params: params ?? {} }) as ProblemOf<Code>;

export const refused = <Code extends ProblemCode>(
  code: Code,
  ...carried: Carried<Code>
): Outcome<never> => ({ ok: false, problem: problemOf(code, ...carried) });
