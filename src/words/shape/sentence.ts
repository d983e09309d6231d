import type { ProblemCode, RawProblem } from '../../core/problem.ts';
import type { AllProblems } from '../../core/problems/all.ts';
import type { ShownIn } from '../../core/problems/param.ts';

/**
 * What happened, and what a person can do about it. Whole sentences, both. `p` has what the code carries, as text: a
 * figure is shown to six significant figures, so that 3.1000000001 never reaches a person; whoever raised the problem
 * rounds it to what a person should see.
 */
export interface Sentence<Code extends ProblemCode> {
  message(p: ShownIn<AllProblems[Code]>): string;
  remedy(p: ShownIn<AllProblems[Code]>): string;
}

/** The sentences of these codes, none missing. Each area has one file, `en/<area>.ts`, listed in `en/areas.ts`. */
export type Sentences<Code extends ProblemCode> = {
  readonly [One in Code]: Sentence<One>;
};

/** The sentences of some areas. */
export type SomeSentences = Partial<Sentences<ProblemCode>>;

/** What a problem carries, as sentences show it. */
export const shown = (params: RawProblem['params']): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(params).map(([name, value]) => [
      name,
      typeof value === 'number' ? showNumber(value) : value,
    ]),
  );

const showNumber = (value: number): string =>
  Number.isFinite(value) ? String(Number(value.toPrecision(6))) : 'not a number';
