import { useEffect, useState } from 'react';

export interface OnThread<R> {
  /** The last reply; stays while a newer question is worked on. */
  readonly reply: R | Broke | undefined;
  readonly isBusy: boolean;
}

/** A bug on the thread, told so that the page can say it instead of waiting. */
interface Broke {
  readonly kind: 'broke';
  readonly message: string;
}

/**
 * Asks one question on a thread of its own, which a newer question ends at once; nothing where there is no question. Give
 * the same object for the same question, and a `start` that stays the same.
 */
export const useOnThread = <R>(question: object | undefined, start: () => Worker): OnThread<R> => {
  const [answered, setAnswered] = useState<{
    readonly question: object;
    readonly reply: R | Broke;
  }>();
  useEffect(() => {
    if (question === undefined) return;
    const thread = start();
    thread.onmessage = ({ data }: MessageEvent<R>) => {
      setAnswered({ question, reply: data });
      thread.terminate();
    };
    thread.onerror = ({ message }) => setAnswered({ question, reply: { kind: 'broke', message } });
    thread.postMessage(question);
    return () => thread.terminate();
  }, [question, start]);
  if (question === undefined) return { reply: undefined, isBusy: false };
  return { reply: answered?.reply, isBusy: answered?.question !== question };
};
