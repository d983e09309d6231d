import { nextCardFrom } from '../../core/cutmodel/nextCard.ts';
import { answerOn } from '../../core/study/answerWithEarlier.ts';
import type { Answers } from './answerCalls.ts';
import { lastFit } from './lastFit.ts';

/** What the model's thread answers: both from one fit. */
export const modelCalls = {
  fit: (asked) => answerOn(lastFit(asked), asked.aim),
  nextCard: ({ cellsWanted, settingsAtMost, ...asked }) =>
    nextCardFrom(lastFit(asked).fitted, { cellsWanted, settingsAtMost }),
} satisfies Answers<'fit' | 'nextCard'>;
