/// <reference lib="webworker" />
import { answerPlan } from './answerPlan.ts';
import type { PlanQuestion } from './planMessages.ts';

declare const self: DedicatedWorkerGlobalScope;

self.addEventListener('message', ({ data }: MessageEvent<PlanQuestion>) =>
  self.postMessage(answerPlan(data)),
);
