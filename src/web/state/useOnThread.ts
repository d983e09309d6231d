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
 * the same object for the same question, and a `start` that stays the same. `patienceMs`: questions that follow one another
 * faster than that are passed over.
 */
export const useOnThread = <R>(
  question: object | undefined,
  start: () => Worker,
  patienceMs = 0,
): OnThread<R> => {
  const [answered, setAnswered] = useState<{
    readonly question: object;
    readonly reply: R | Broke;
  }>();
  useEffect(() => {
    if (question === undefined) return;
    let thread: Worker | undefined;
    const ask = (): void => {
      const asked = start();
      thread = asked;
      asked.onmessage = ({ data }: MessageEvent<R>) => {
        setAnswered({ question, reply: data });
        asked.terminate();
      };
      asked.onerror = ({ message }) => setAnswered({ question, reply: { kind: 'broke', message } });
      asked.postMessage(question);
    };
    const timer = setTimeout(ask, patienceMs);
    return () => {
      clearTimeout(timer);
      thread?.terminate();
    };
  }, [question, start, patienceMs]);
  if (question === undefined) return { reply: undefined, isBusy: false };
  return { reply: answered?.reply, isBusy: answered?.question !== question };
};
