import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { NextCardAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { StudyAnswer } from '../../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import type { Aim } from '../../core/study/study.ts';
import type { ModelQuestion, ModelReply } from '../worker/messages.ts';

/** The model on its own thread, asked in promises. */
export interface Model {
  readonly fit: (asked: FitAsked) => Promise<StudyAnswer>;
  readonly nextCard: (asked: NextCardAsked) => Promise<NextCardAnswer>;
}

/** A study with what earlier sheets taught. */
interface Asked {
  readonly study: CutStudy;
  readonly earlier: readonly EarlierSheet[];
}

export interface FitAsked extends Asked {
  readonly aim: Aim;
}

export interface NextCardWish {
  readonly cellsWanted: number;
  readonly settingsAtMost: number;
}

export interface NextCardAsked extends Asked, NextCardWish {}

/** The part of a worker that is used here. */
export interface Thread {
  postMessage: (question: ModelQuestion) => void;
  onmessage: ((event: MessageEvent<ModelReply>) => void) | null;
}

/**
 * Starts the model: one thread for answers, and a second, started when first needed, for the next card, so that an
 * answer never waits behind it.
 */
export const startModel = (first: Thread, another: () => Thread): Model => {
  const askFit = asking(first);
  let askNext: ReturnType<typeof asking> | undefined;
  return {
    fit: async (asked) => {
      const reply = await askFit((id) => ({ id, kind: 'fit', ...asked }));
      if (reply.kind === 'fit') return reply.answer;
      throw new Error(reply.kind === 'broke' ? reply.message : 'another question was answered');
    },
    nextCard: async (asked) => {
      askNext ??= asking(another());
      const reply = await askNext((id) => ({ id, kind: 'next-card', ...asked }));
      if (reply.kind === 'next-card') return reply.answer;
      throw new Error(reply.kind === 'broke' ? reply.message : 'another question was answered');
    },
  };
};

/** Pairs replies with questions. */
const asking = (thread: Thread) => {
  const open = new Map<number, (reply: ModelReply) => void>();
  let lastId = 0;
  thread.onmessage = ({ data }) => {
    open.get(data.id)?.(data);
    open.delete(data.id);
  };
  return (question: (id: number) => ModelQuestion): Promise<ModelReply> =>
    new Promise((resolve) => {
      lastId += 1;
      open.set(lastId, resolve);
      thread.postMessage(question(lastId));
    });
};

/** Starts the thread from the built page. */
export const modelThread = (): Thread =>
  new Worker(new URL('../worker/model.ts', import.meta.url), { type: 'module', name: 'cut model' });
