/**
 * One shape for what went wrong. `code` is looked up in the words layer, where a person's message and remedy live;
 * `params` fill the sentence. Each layer lists its own codes.
 */
export interface Problem {
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

export const refused = (code: string, params: Problem['params'] = {}): Outcome<never> => ({
  ok: false,
  problem: { code, params },
});
