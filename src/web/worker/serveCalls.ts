/// <reference lib="webworker" />
import { answerCalls, type Answers } from './answerCalls.ts';
import type { Asked, CallName } from './calls.ts';

declare const self: DedicatedWorkerGlobalScope;

/** Makes this thread answer these calls. */
export const serveCalls = <Call extends CallName>(answers: Answers<Call>): void => {
  const answer = answerCalls(answers);
  self.addEventListener('message', ({ data }: MessageEvent<Asked>) => {
    void answer(data, (reply) => self.postMessage(reply));
  });
};
