/// <reference lib="webworker" />
import { explainWithEarlier } from '../../core/explain/explainWithEarlier.ts';
import type { WhyQuestion, WhyReply } from './whyMessages.ts';

declare const self: DedicatedWorkerGlobalScope;

const replyTo = ({ study, earlier }: WhyQuestion): WhyReply => {
  try {
    return { kind: 'explained', explained: explainWithEarlier(study, earlier) };
  } catch (error) {
    return { kind: 'broke', message: error instanceof Error ? error.message : String(error) };
  }
};

self.addEventListener('message', ({ data }: MessageEvent<WhyQuestion>) =>
  self.postMessage(replyTo(data)),
);
