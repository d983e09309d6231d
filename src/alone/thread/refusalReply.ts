import { problemOf, type Problem } from '../../core/problem.ts';
import { carriedProblem } from '../../served/carriedProblem.ts';
import { statusOf } from '../../served/statusOf.ts';
import { problemInWords } from '../../words/words.ts';
import type { ErrorReply } from '../../wire/problem.ts';
import type { PlaceReply } from './messages.ts';

export const jsonType = 'application/json; charset=utf-8';

/** A refusal in words and with its status. */
export const refusalReply = (problem: Problem): PlaceReply => {
  const error: ErrorReply = { error: problemInWords(problem) };
  return { status: statusOf(problem), contentType: jsonType, body: JSON.stringify(error) };
};

/** What was thrown, in words; what nobody expected is told to whoever looks into the browser's console, and stays inside. */
export const thrownReply = (thrown: unknown): PlaceReply => {
  const problem = carriedProblem(thrown);
  if (problem === undefined) console.error(thrown);
  return refusalReply(problem ?? problemOf('something-broke'));
};
