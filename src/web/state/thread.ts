import type { AnswerOf, Asked, CallName, QuestionOf, Reply, StageOf } from '../worker/calls.ts';

/** The part of a worker that is used here. */
export interface Port {
  postMessage: (asked: Asked) => void;
  onmessage: ((event: MessageEvent<Reply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate: () => void;
}

/** A thread that can be asked, in promises. */
export interface Thread {
  readonly ask: <Call extends CallName>(
    call: Call,
    question: QuestionOf<Call>,
    tell?: (stage: StageOf<Call>) => void,
  ) => Promise<AnswerOf<Call>>;
  /** Ends it at once: what was asked is not answered any more. */
  readonly end: () => void;
}

interface Open {
  readonly asked: Asked;
  readonly tell: (stage: unknown) => void;
  readonly answer: (answer: unknown) => void;
  readonly refuse: (error: Error) => void;
}

const betweenTriesMs = 2000;

/** Opens a thread, and pairs what it says with what it was asked. */
export const openThread = (start: () => Port): Thread => {
  const open = new Map<number, Open>();
  let lastId = 0;
  let retry: ReturnType<typeof setTimeout> | undefined;
  let port = begin();
  function begin(): Port {
    const begun = start();
    let hasAnswered = false;
    begun.onmessage = ({ data }) => {
      hasAnswered = true;
      const asking = open.get(data.id);
      if (data.kind === 'stage') {
        asking?.tell(data.stage);
        return;
      }
      open.delete(data.id);
      if (data.kind === 'answer') asking?.answer(data.answer);
      else asking?.refuse(new Error(data.message));
    };
    begun.onerror = ({ message }) => {
      // A script that could not be fetched, since the server is away, says nothing: the questions wait for the next try.
      if (!hasAnswered && !message) retry = setTimeout(tryAgain, betweenTriesMs);
      else refuseAll(new Error(message));
    };
    return begun;
  }
  function tryAgain(): void {
    port = begin();
    for (const { asked } of open.values()) port.postMessage(asked);
  }
  function refuseAll(error: Error): void {
    for (const { refuse } of open.values()) refuse(error);
    open.clear();
  }
  return {
    ask: (call, question, tell) =>
      new Promise((resolve, reject) => {
        lastId += 1;
        const asked = { id: lastId, call, question };
        open.set(lastId, {
          asked,
          // What a thread says to a call is typed where the call is answered (`answerCalls.ts`).
          tell: (stage) => tell?.(stage as StageOf<typeof call>),
          answer: (answer) => resolve(answer as AnswerOf<typeof call>),
          refuse: reject,
        });
        port.postMessage(asked);
      }),
    end: () => {
      clearTimeout(retry);
      port.terminate();
      open.clear();
    },
  };
};
