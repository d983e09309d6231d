import { rememberNewest } from '../../core/cutmodel/rememberNewest.ts';
import type { FitAnswer } from '../../core/cutmodel/fitAnswer.ts';
import { answerWithEarlier, fitWithEarlier } from '../../core/study/answerWithEarlier.ts';
import { stripVerdict, type StripVerdict } from '../../core/watch/stripVerdict.ts';
import {
  standingAsKnown,
  type AnswerQuestion,
  type KeptJudged,
  type KeptQuestion,
  type StripQuestion,
} from './standingAsKnown.ts';

/** How a kept setting stands, with the sums made. An answer and a fit for each strip that is asked of, ~0.3 s each. */
export const judgeKept = (question: KeptQuestion): KeptJudged =>
  standingAsKnown(question, {
    verdictOf: (asked) => verdictOf(asked),
    answerOf: (asked) => answerOf(asked),
  });

const answerOf = rememberNewest(({ cut, aim, earlier }: AnswerQuestion): FitAnswer =>
  answerWithEarlier(cut, aim, earlier),
);

const verdictOf = rememberNewest(
  ({ cut, earlier, setting, offerFaster }: StripQuestion): StripVerdict =>
    stripVerdict(fitWithEarlier(cut, earlier), setting, offerFaster),
);
