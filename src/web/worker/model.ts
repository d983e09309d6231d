/// <reference lib="webworker" />
import { answerForAim } from '../../core/cutmodel/answerForAim.ts';
import { fitStudy } from '../../core/cutmodel/fitStudy.ts';
import { proposeNextCard } from '../../core/cutmodel/nextCard.ts';
import { warmStudy } from './warmStudy.ts';
import type { ModelQuestion, ModelReply } from './messages.ts';

declare const self: DedicatedWorkerGlobalScope;

const reply = (question: ModelQuestion): ModelReply => {
  const startedMs = performance.now();
  const { id, study } = question;
  try {
    if (question.kind === 'fit') {
      const answer = answerForAim(study, question.aim);
      return { id, kind: 'fit', answer, tookMs: performance.now() - startedMs };
    }
    const { cellsWanted, settingsAtMost } = question;
    const answer = proposeNextCard(study, { cellsWanted, settingsAtMost });
    return { id, kind: 'next-card', answer, tookMs: performance.now() - startedMs };
  } catch (error) {
    return { id, kind: 'broke', message: error instanceof Error ? error.message : String(error) };
  }
};

// The first fit is slow until the engine has seen the code run: that time is spent before anyone taps.
const warmUp = setTimeout(() => void fitStudy(warmStudy), 50);

self.addEventListener('message', ({ data }: MessageEvent<ModelQuestion>) => {
  clearTimeout(warmUp);
  self.postMessage(reply(data));
});
