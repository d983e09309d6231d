import type { Outcome, Problem } from '../core/problem.ts';
import { problemInWords } from '../words/words.ts';

/** 0: done, also where the answer is "none, because"; 1: done and found faults; 2: bad input. */
export type ExitCode = 0 | 1 | 2;

/** Writes one JSON value on standard output. */
export const printJson = (value: unknown): void => {
  process.stdout.write(`${JSON.stringify(value, null, 2)}\n`);
};

/** Prints what came out, or the refusal in words. */
export const printOutcome = <T>(outcome: Outcome<T>, shown: (value: T) => unknown): ExitCode => {
  if (!outcome.ok) return printRefusal(outcome.problem);
  printJson(shown(outcome.value));
  return 0;
};

/** What every refusal of a command looks like. */
export const printRefusal = (problem: Problem): 2 => {
  printJson({ error: problemInWords(problem) });
  return 2;
};

/** For a person who watches the terminal. */
export const tell = (line: string): void => {
  process.stderr.write(`${line}\n`);
};
