import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { FitAnswer, NextCardAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { ModelQuestion, ModelReply } from '../worker/messages.ts';

/** The model on its own thread, asked in promises. */
export interface Model {
  readonly fit: (study: CutStudy) => Promise<FitAnswer>;
  readonly nextCard: (study: CutStudy, wish: NextCardWish) => Promise<NextCardAnswer>;
}

export interface NextCardWish {
  readonly cellsWanted: number;
  readonly settingsAtMost: number;
}

/** The part of a worker that is used here. */
export interface Thread {
  postMessage: (question: ModelQuestion) => void;
  onmessage: ((event: MessageEvent<ModelReply>) => void) | null;
}

export const startModel = (thread: Thread): Model => {
  const open = new Map<number, (reply: ModelReply) => void>();
  let lastId = 0;
  thread.onmessage = ({ data }) => {
    open.get(data.id)?.(data);
    open.delete(data.id);
  };
  const ask = (question: (id: number) => ModelQuestion): Promise<ModelReply> =>
    new Promise((resolve) => {
      lastId += 1;
      open.set(lastId, resolve);
      thread.postMessage(question(lastId));
    });

  return {
    fit: async (study) => {
      const reply = await ask((id) => ({ id, kind: 'fit', study }));
      if (reply.kind === 'fit') return reply.answer;
      throw new Error(reply.kind === 'broke' ? reply.message : 'the model answered another question');
    },
    nextCard: async (study, wish) => {
      const reply = await ask((id) => ({ id, kind: 'next-card', study, ...wish }));
      if (reply.kind === 'next-card') return reply.answer;
      throw new Error(reply.kind === 'broke' ? reply.message : 'the model answered another question');
    },
  };
};

/** Starts the thread from the built page. */
export const modelThread = (): Thread =>
  new Worker(new URL('../worker/model.ts', import.meta.url), { type: 'module', name: 'cut model' });
