/// <reference lib="webworker" />
import { runSum } from '../../app/sums/modelHere.ts';
import { refused } from '../../core/problem.ts';
import type { SumAsked, SumMade } from './messages.ts';

declare const self: DedicatedWorkerGlobalScope;

const made = async ({ id, name, question }: SumAsked): Promise<SumMade> => {
  try {
    return { id, outcome: await runSum(name, question) };
  } catch (thrown) {
    console.error(thrown);
    return { id, outcome: refused('something-broke') };
  }
};

self.addEventListener('message', ({ data }: MessageEvent<SumAsked>) => {
  void made(data).then((reply) => self.postMessage(reply));
});
