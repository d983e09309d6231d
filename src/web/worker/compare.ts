/// <reference lib="webworker" />
import { compareConditions } from '../../core/compare/compareConditions.ts';
import type { CompareQuestion, CompareReply } from './compareMessages.ts';

declare const self: DedicatedWorkerGlobalScope;

const answer = (question: CompareQuestion): CompareReply => {
  try {
    return { kind: 'compared', comparison: compareConditions(question) };
  } catch (error) {
    return { kind: 'broke', message: error instanceof Error ? error.message : String(error) };
  }
};

self.addEventListener('message', ({ data }: MessageEvent<CompareQuestion>) =>
  self.postMessage(answer(data)),
);
