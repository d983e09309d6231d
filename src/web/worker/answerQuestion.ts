import { answerWithEarlier, nextCardWithEarlier } from '../../core/study/answerWithEarlier.ts';
import type { ModelQuestion, ModelReply } from './messages.ts';

/** What the model's thread says to a question. `nowMs`: a clock that only rises. */
export const answerQuestion = (question: ModelQuestion, nowMs: () => number): ModelReply => {
  const startedMs = nowMs();
  const { id, study, earlier } = question;
  try {
    if (question.kind === 'fit') {
      const answer = answerWithEarlier(study, question.aim, earlier);
      return { id, kind: 'fit', answer, tookMs: nowMs() - startedMs };
    }
    const { cellsWanted, settingsAtMost } = question;
    const answer = nextCardWithEarlier(study, { cellsWanted, settingsAtMost }, earlier);
    return { id, kind: 'next-card', answer, tookMs: nowMs() - startedMs };
  } catch (error) {
    return { id, kind: 'broke', message: error instanceof Error ? error.message : String(error) };
  }
};
