/// <reference lib="webworker" />
import type { MotionQuestion } from './motionMessages.ts';
import { answerMotion } from './answerMotion.ts';

declare const self: DedicatedWorkerGlobalScope;

self.addEventListener('message', ({ data }: MessageEvent<MotionQuestion>) =>
  self.postMessage(answerMotion(data)),
);
