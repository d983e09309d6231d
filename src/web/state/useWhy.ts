import { useMemo } from 'react';
import type { StudyExplained } from '../../core/explain/explainWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import type { Study } from '../../core/study/study.ts';
import type { WhyReply } from '../worker/whyMessages.ts';
import { useOnThread } from './useOnThread.ts';

export interface Why {
  /** Stays on screen while a newer one is reckoned. */
  readonly explained: StudyExplained | undefined;
  readonly isBehind: boolean;
  readonly broke: string | undefined;
}

/** Taps that follow one another are waited out this long. */
const patienceMs = 300;

/** Why the study's answer is what it is, reckoned on a thread of its own. */
export const useWhy = (study: Study, earlier: readonly EarlierSheet[]): Why => {
  const question = useMemo(() => ({ study, earlier }), [study, earlier]);
  const { reply, isBusy } = useOnThread<WhyReply>(question, whyThread, patienceMs);
  return {
    explained: reply?.kind === 'explained' ? reply.explained : undefined,
    isBehind: isBusy,
    broke: reply?.kind === 'broke' ? reply.message : undefined,
  };
};

/** Starts the thread from the built page. */
const whyThread = (): Worker =>
  new Worker(new URL('../worker/why.ts', import.meta.url), { type: 'module', name: 'why' });
