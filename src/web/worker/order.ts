/// <reference lib="webworker" />
import { orderAnswer } from '../../core/order/orderAnswer.ts';
import { fitWithEarlier } from '../../core/study/answerWithEarlier.ts';
import type { OrderQuestion, OrderReply } from './orderMessages.ts';

declare const self: DedicatedWorkerGlobalScope;

const answer = ({ study, earlier, wish }: OrderQuestion): OrderReply => {
  try {
    return { kind: 'foretold', answer: orderAnswer(fitWithEarlier(study, earlier), wish) };
  } catch (error) {
    return { kind: 'broke', message: error instanceof Error ? error.message : String(error) };
  }
};

self.addEventListener('message', ({ data }: MessageEvent<OrderQuestion>) =>
  self.postMessage(answer(data)),
);
