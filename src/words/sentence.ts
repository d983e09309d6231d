import type { Problem } from '../core/problem.ts';

/**
 * Gives the text of one of a problem's params by name: `p('cell')`. A number is shown to six significant figures, so
 * that 3.1000000001 never reaches a person; whoever raised the problem rounds it to what a person should see. A param
 * that was not given shows as `(not given)`, never as `undefined`.
 */
export type Fill = (param: string) => string;

/** What happened, and what a person can do about it. Whole sentences, both. */
export interface Sentence {
  readonly message: (p: Fill) => string;
  readonly remedy: (p: Fill) => string;
}

/** The sentences of one area, by code. Each area has one file, `en/<area>.ts`, listed in `en/areas.ts`. */
export type AreaWords = Readonly<Record<string, Sentence>>;

export const fillFrom =
  (params: Problem['params']): Fill =>
  (param) => {
    const value = params[param];
    if (value === undefined) return '(not given)';
    return typeof value === 'number' ? showNumber(value) : value;
  };

const showNumber = (value: number): string =>
  Number.isFinite(value) ? String(Number(value.toPrecision(6))) : 'not a number';
