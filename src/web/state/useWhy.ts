import { useEffect, useState } from 'react';
import type { StudyExplained } from '../../core/explain/explainWithEarlier.ts';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import type { Study } from '../../core/study/study.ts';
import type { WhyReply } from '../worker/whyMessages.ts';

export interface Why {
  /** Stays on screen while a newer one is reckoned. */
  readonly explained: StudyExplained | undefined;
  readonly isBehind: boolean;
  readonly broke: string | undefined;
}

/** Taps that follow one another are waited out this long. */
const patienceMs = 300;

/** Why the study's answer is what it is, reckoned on a thread of its own, which a newer question ends. */
export const useWhy = (study: Study, earlier: readonly EarlierSheet[]): Why => {
  const [explained, setExplained] = useState<StudyExplained>();
  const [isBehind, setIsBehind] = useState(true);
  const [broke, setBroke] = useState<string>();
  useEffect(() => {
    let thread: Worker | undefined;
    const timer = setTimeout(() => {
      setIsBehind(true);
      thread = whyThread();
      thread.onmessage = ({ data }: MessageEvent<WhyReply>) => {
        if (data.kind === 'explained') setExplained(data.explained);
        setBroke(data.kind === 'broke' ? data.message : undefined);
        setIsBehind(false);
        thread?.terminate();
      };
      thread.onerror = ({ message }) => {
        setBroke(message);
        setIsBehind(false);
      };
      thread.postMessage({ study, earlier });
    }, patienceMs);
    return () => {
      clearTimeout(timer);
      thread?.terminate();
    };
  }, [study, earlier]);
  return { explained, isBehind, broke };
};

const whyThread = (): Worker =>
  new Worker(new URL('../worker/why.ts', import.meta.url), { type: 'module', name: 'why' });
