import type { Comparison } from '../../core/compare/compareConditions.ts';
import type { Outcome } from '../../core/problem.ts';
import type { CompareQuestion, CompareReply } from '../worker/compareMessages.ts';
import { useOnThread } from './useOnThread.ts';

export interface Comparing {
  /** The last comparison; stays on screen while a newer one is reckoned. */
  readonly comparison: Outcome<Comparison> | undefined;
  readonly isBusy: boolean;
  readonly broke: string | undefined;
}

/** Compares on a thread of its own. Give the same object for the same question. */
export const useComparison = (question: CompareQuestion | undefined): Comparing => {
  const { reply, isBusy } = useOnThread<CompareReply>(question, compareThread);
  return {
    comparison: reply?.kind === 'compared' ? reply.comparison : undefined,
    isBusy,
    broke: reply?.kind === 'broke' ? reply.message : undefined,
  };
};

/** Starts the thread from the built page. */
const compareThread = (): Worker =>
  new Worker(new URL('../worker/compare.ts', import.meta.url), {
    type: 'module',
    name: 'comparison',
  });
