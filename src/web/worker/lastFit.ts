import { settledFit, type SettledFit } from '../../core/study/answerWithEarlier.ts';
import type { QuestionOf } from './calls.ts';

type Asked = Pick<QuestionOf<'fit'>, 'study' | 'earlier'>;

let last: { readonly asked: string; readonly settled: SettledFit } | undefined;

/**
 * The fit behind a question, kept until the next one is of something else: an answer and the two next cards that the page
 * asks for beside it take one fit. What is kept is what would be reckoned again.
 */
export const lastFit = ({ study, earlier }: Asked): SettledFit => {
  const asked = JSON.stringify([study, earlier]);
  if (last?.asked !== asked) last = { asked, settled: settledFit(study, earlier) };
  return last.settled;
};
