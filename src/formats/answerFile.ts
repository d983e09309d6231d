import type { FitAnswer, NextCardAnswer } from '../core/cutmodel/fitAnswer.ts';
import type { Problem } from '../core/problem.ts';

/** Something worth saying, in a program's words and a person's. */
export interface Said {
  readonly code: string;
  readonly message: string;
}

/** The answer as the command line and the server print it: what it says put into words. */
export type FitAnswerFile = Omit<FitAnswer, 'reason' | 'warnings'> & {
  readonly reason?: Said;
  readonly warnings: readonly Said[];
};

export type NextCardFile = Omit<NextCardAnswer, 'reason'> & {
  readonly warnings: readonly Said[];
  readonly reason: string;
  readonly reasonCode: string;
};

/** Puts a problem into words; the words are not this layer's. */
export type Say = (problem: Problem) => Said;

export const fitAnswerFile = (
  { reason, warnings, ...answer }: FitAnswer,
  say: Say,
): FitAnswerFile => ({
  ...answer,
  ...(reason === undefined ? {} : { reason: spoken(say, reason) }),
  warnings: warnings.map((warning) => spoken(say, warning)),
});

export const nextCardFile = (
  { reason, warnings, ...answer }: NextCardAnswer & { readonly warnings: readonly Problem[] },
  say: Say,
): NextCardFile => ({
  ...answer,
  warnings: warnings.map((warning) => spoken(say, warning)),
  reason: say(reason).message,
  reasonCode: reason.code,
});

const spoken = (say: Say, problem: Problem): Said => {
  const { code, message } = say(problem);
  return { code, message };
};
