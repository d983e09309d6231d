import type { AnswerOf, QuestionOf } from '../worker/calls.ts';
import { openThread, type Port, type Thread } from './thread.ts';

/** The model on its own thread, asked in promises. */
export interface Model {
  readonly fit: (asked: QuestionOf<'fit'>) => Promise<AnswerOf<'fit'>>;
  readonly nextCard: (asked: QuestionOf<'nextCard'>) => Promise<AnswerOf<'nextCard'>>;
  /** Gets the thread ready before it is asked anything. */
  readonly open: () => void;
}

/**
 * The model, on one thread for answers and a second for the next card, so that an answer never waits behind it. Each is
 * opened when it is first needed: until the first view stands, the line has other things to carry.
 */
export const startModel = (start: () => Port): Model => {
  let forFits: Thread | undefined;
  let forCards: Thread | undefined;
  return {
    open: () => {
      forFits ??= openThread(start);
    },
    fit: askedOnce((asked) => (forFits ??= openThread(start)).ask('fit', asked)),
    nextCard: askedOnce((asked) => (forCards ??= openThread(start)).ask('nextCard', asked)),
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
