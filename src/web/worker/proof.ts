/// <reference lib="webworker" />
import type { ProofQuestion } from './proofMessages.ts';
import { proveQuestion } from './proveQuestion.ts';

declare const self: DedicatedWorkerGlobalScope;

self.addEventListener('message', ({ data }: MessageEvent<ProofQuestion>) =>
  proveQuestion(data, (reply) => self.postMessage(reply)),
);
