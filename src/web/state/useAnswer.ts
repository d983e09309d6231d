import { useEffect, useMemo, useRef, useState } from 'react';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { FitAnswer, NextCardAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { Study } from '../../core/study/study.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import type { NextCardWish } from './model.ts';
import { useWorkshop } from './workshop.tsx';

export interface Answering<T> {
  /** The answer to the study as it was last fitted; stays on screen while a newer one is reckoned. */
  readonly answer: T | undefined;
  /** True while `answer` is older than what is shown. */
  readonly behind: boolean;
  readonly broke: string | undefined;
}

/** Whether there is anything for the model to go by. */
export const saysSomething = (study: CutStudy): boolean =>
  study.cells.length > 0 || study.tallies.length > 0 || study.habit !== undefined;

/** The study's answer, reckoned off the page's thread after each change. */
export const useAnswer = (study: Study): Answering<FitAnswer> => {
  const { model } = useWorkshop();
  const question = useSame(useMemo(() => ({ study: toCutStudy(study), aim: study.aim }), [study]));
  const ask = useMemo(() => (asked: typeof question) => model.fit(asked.study, asked.aim), [model]);
  return useLatest(question, saysSomething(question.study), ask);
};

/** The card that would teach most. */
export const useNextCard = (study: Study, wish: NextCardWish): Answering<NextCardAnswer> => {
  const { model } = useWorkshop();
  const { cellsWanted, settingsAtMost } = wish;
  const question = useMemo(
    () => ({ study: toCutStudy(study), wish: { cellsWanted, settingsAtMost } }),
    [study, cellsWanted, settingsAtMost],
  );
  const ask = useMemo(
    () => (asked: typeof question) => model.nextCard(asked.study, asked.wish),
    [model],
  );
  return useLatest(question, saysSomething(question.study), ask);
};

/** The value given before, where the new one says the same: so that the same question is not asked twice. */
const useSame = <Q>(fresh: Q): Q => {
  const [kept, setKept] = useState(fresh);
  if (kept !== fresh && JSON.stringify(kept) !== JSON.stringify(fresh)) {
    setKept(fresh);
    return fresh;
  }
  return kept;
};

interface Settled<Q, T> {
  readonly question: Q;
  readonly answer: T | undefined;
  readonly broke: string | undefined;
}

/** Asks about the newest question only: one that was overtaken while the model was busy is never asked. */
const useLatest = <Q, T>(
  question: Q,
  worthAsking: boolean,
  ask: (question: Q) => Promise<T>,
): Answering<T> => {
  const [settled, setSettled] = useState<Settled<Q, T>>();
  const newest = useRef<Q>(undefined);
  const busy = useRef(false);
  useEffect(() => {
    newest.current = worthAsking ? question : undefined;
    if (!worthAsking || busy.current) return;
    const run = async (asked: Q): Promise<void> => {
      busy.current = true;
      const outcome = await ask(asked).then(
        (answer) => ({ answer, broke: undefined }),
        (error: unknown) => ({
          answer: undefined,
          broke: error instanceof Error ? error.message : String(error),
        }),
      );
      busy.current = false;
      const next = newest.current;
      if (next === undefined) return;
      setSettled({ question: asked, ...outcome });
      if (next !== asked) await run(next);
    };
    void run(question);
  }, [question, worthAsking, ask]);
  if (!worthAsking) return { answer: undefined, behind: false, broke: undefined };
  return {
    answer: settled?.answer,
    behind: settled?.question !== question,
    broke: settled?.broke,
  };
};
