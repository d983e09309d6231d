import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { NextCardAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { StudyAnswer } from '../../core/study/answerWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import type { Aim } from '../../core/cutmodel/aims.ts';
import type { ModelQuestion, ModelReply } from '../worker/messages.ts';

/** The model on its own thread, asked in promises. */
export interface Model {
  readonly fit: (asked: FitAsked) => Promise<StudyAnswer>;
  readonly nextCard: (asked: NextCardAsked) => Promise<NextCardAnswer>;
  /** Gets the thread ready before it is asked anything. */
  readonly open: () => void;
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
  onerror?: ((event: ErrorEvent) => void) | null;
}

/**
 * The model, on one thread for answers and a second for the next card, so that an answer never waits behind it. Each is
 * opened when it is first needed: until the first view stands, the line has other things to carry.
 */
export const startModel = (openThread: () => Thread): Model => {
  let askFit: ReturnType<typeof asking> | undefined;
  let askNext: ReturnType<typeof asking> | undefined;
  return {
    open: () => {
      askFit ??= asking(openThread);
    },
    fit: askedOnce(async ({ study, earlier, aim }) => {
      askFit ??= asking(openThread);
      const reply = await askFit((id) => ({ id, kind: 'fit', study, aim, earlier }));
      if (reply.kind === 'fit') return reply.answer;
      throw new Error(reply.kind === 'broke' ? reply.message : 'another question was answered');
    }),
    nextCard: askedOnce(async (asked) => {
      askNext ??= asking(openThread);
      const reply = await askNext((id) => ({ id, kind: 'next-card', ...asked }));
      if (reply.kind === 'next-card') return reply.answer;
      throw new Error(reply.kind === 'broke' ? reply.message : 'another question was answered');
    }),
  };
};

/** Answers kept, so that the parts of a screen that ask the same, at once or one after another, ask the thread once. */
const mostKept = 4;

const askedOnce = <Q, A>(ask: (question: Q) => Promise<A>): ((question: Q) => Promise<A>) => {
  const kept = new Map<string, Promise<A>>();
  return (question) => {
    const key = JSON.stringify(question);
    const before = kept.get(key);
    if (before !== undefined) return before;
    const answer = ask(question);
    kept.set(key, answer);
    for (const oldest of [...kept.keys()].slice(0, -mostKept)) kept.delete(oldest);
    // What broke may be asked again.
    answer.catch(() => kept.delete(key));
    return answer;
  };
};

const betweenTriesMs = 2000;

interface Open {
  readonly question: ModelQuestion;
  readonly answer: (reply: ModelReply) => void;
}

/** Pairs replies with questions. */
const asking = (openThread: () => Thread) => {
  const open = new Map<number, Open>();
  let lastId = 0;
  let thread = start();
  function start(): Thread {
    const started = openThread();
    let hasAnswered = false;
    started.onmessage = ({ data }) => {
      hasAnswered = true;
      open.get(data.id)?.answer(data);
      open.delete(data.id);
    };
    started.onerror = () => {
      // Its script could not be fetched while the server was away: the questions wait for the next try.
      if (hasAnswered) return;
      setTimeout(() => {
        thread = start();
        for (const { question } of open.values()) thread.postMessage(question);
      }, betweenTriesMs);
    };
    return started;
  }
  return (question: (id: number) => ModelQuestion): Promise<ModelReply> =>
    new Promise((resolve) => {
      lastId += 1;
      const asked = question(lastId);
      open.set(lastId, { question: asked, answer: resolve });
      thread.postMessage(asked);
    });
};

/** Starts the thread from the built page. */
export const modelThread = (): Thread =>
  new Worker(new URL('../worker/model.ts', import.meta.url), { type: 'module', name: 'cut model' });
