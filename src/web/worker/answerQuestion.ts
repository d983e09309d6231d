import { nextCardFrom } from '../../core/cutmodel/nextCard.ts';
import { answerOn } from '../../core/study/answerWithEarlier.ts';
import { lastFit } from './lastFit.ts';
import type { ModelQuestion, ModelReply } from './messages.ts';

/** What the model's thread says to a question. `nowMs`: a clock that only rises. */
export const answerQuestion = (question: ModelQuestion, nowMs: () => number): ModelReply => {
  const startedMs = nowMs();
  const { id } = question;
  try {
    if (question.kind === 'fit') {
      const answer = answerOn(lastFit(question), question.aim);
      return { id, kind: 'fit', answer, tookMs: nowMs() - startedMs };
    }
    const { cellsWanted, settingsAtMost } = question;
    const answer = nextCardFrom(lastFit(question).found, { cellsWanted, settingsAtMost });
    return { id, kind: 'next-card', answer, tookMs: nowMs() - startedMs };
  } catch (error) {
    return { id, kind: 'broke', message: error instanceof Error ? error.message : String(error) };
  }
};
