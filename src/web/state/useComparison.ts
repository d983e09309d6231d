import { useEffect, useState } from 'react';
import type { Comparison } from '../../core/compare/compareConditions.ts';
import type { Outcome } from '../../core/problem.ts';
import type { CompareQuestion, CompareReply } from '../worker/compareMessages.ts';

export interface Comparing {
  /** The last comparison; stays on screen while a newer one is reckoned. */
  readonly comparison: Outcome<Comparison> | undefined;
  readonly isBusy: boolean;
  readonly broke: string | undefined;
}

interface Answered {
  readonly question: CompareQuestion;
  readonly reply: CompareReply;
}

/** Compares on a thread of its own, which a newer question ends at once. Give the same object for the same question. */
export const useComparison = (question: CompareQuestion | undefined): Comparing => {
  const [answered, setAnswered] = useState<Answered>();
  useEffect(() => {
    if (question === undefined) return;
    const thread = compareThread();
    thread.onmessage = ({ data }: MessageEvent<CompareReply>) => {
      setAnswered({ question, reply: data });
      thread.terminate();
    };
    thread.onerror = ({ message }) => setAnswered({ question, reply: { kind: 'broke', message } });
    thread.postMessage(question);
    return () => thread.terminate();
  }, [question]);
  if (question === undefined) return { comparison: undefined, isBusy: false, broke: undefined };
  const reply = answered?.reply;
  return {
    comparison: reply?.kind === 'compared' ? reply.comparison : undefined,
    isBusy: answered?.question !== question,
    broke: reply?.kind === 'broke' ? reply.message : undefined,
  };
};

/** Starts the thread from the built page. */
const compareThread = (): Worker =>
  new Worker(new URL('../worker/compare.ts', import.meta.url), {
    type: 'module',
    name: 'comparison',
  });
