/// <reference lib="webworker" />
import { fitStudy } from '../../core/cutmodel/fitStudy.ts';
import { answerQuestion } from './answerQuestion.ts';
import type { ModelQuestion } from './messages.ts';
import { warmStudy } from './warmStudy.ts';

declare const self: DedicatedWorkerGlobalScope;

// The first fit is slow until the engine has seen the code run: that time is spent before anyone taps.
const warmUp = setTimeout(() => void fitStudy(warmStudy), 50);

self.addEventListener('message', ({ data }: MessageEvent<ModelQuestion>) => {
  clearTimeout(warmUp);
  self.postMessage(answerQuestion(data, () => performance.now()));
});
