/// <reference lib="webworker" />
import { compareTwo } from '../../app/sums/compareTwo.ts';
import type { CompareQuestion, CompareReply } from './compareMessages.ts';

declare const self: DedicatedWorkerGlobalScope;

const answer = (question: CompareQuestion): CompareReply => {
  try {
    return { kind: 'compared', comparison: compareTwo(question) };
  } catch (error) {
    return { kind: 'broke', message: error instanceof Error ? error.message : String(error) };
  }
};

self.addEventListener('message', ({ data }: MessageEvent<CompareQuestion>) =>
  self.postMessage(answer(data)),
);
