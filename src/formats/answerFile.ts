import type { FitAnswer, NextCardAnswer } from '../core/cutmodel/fitAnswer.ts';
import type { Problem } from '../core/problem.ts';
import type { Standing } from '../core/standing/standing.ts';

/** Something worth saying, in a program's words and a person's. */
export interface Said {
  readonly code: string;
  readonly message: string;
}

/** The answer as the command line and the server print it: what it says put into words. */
export type FitAnswerFile = Omit<FitAnswer, 'reason' | 'warnings'> & {
  readonly reason?: Said;
  readonly warnings: readonly Said[];
  /** How the sheet stands by its cards and orders. */
  readonly standing?: StandingSaid;
};

/** A standing whose reason is put into words. */
export type StandingSaid = Omit<Standing, 'why'> & {
  readonly why: Standing['why'] & { readonly message: string; readonly remedy: string };
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
  standing?: StandingSaid,
): FitAnswerFile => ({
  ...answer,
  ...(reason === undefined ? {} : { reason: spoken(say, reason) }),
  warnings: warnings.map((warning) => spoken(say, warning)),
  ...(standing === undefined ? {} : { standing }),
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
