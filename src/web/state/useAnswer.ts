import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { NextCardAnswer } from '../../core/cutmodel/fitAnswer.ts';
import type { Standing } from '../../core/standing/standing.ts';
import type { KeptStanding } from '../../core/standing/standingOfSheet.ts';
import type { StudyAnswer } from '../../core/study/answerWithEarlier.ts';
import type { Study } from '../../core/study/study.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import { fetchPart } from './fetchPart.ts';
import type { NextCardWish } from '../worker/calls.ts';
import { useEarlier, type Earlier } from './useEarlier.ts';
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

/** An answer, and how its sheet stands by it: one with the other, so that no screen shows two moments. */
export interface AnswerStanding extends StudyAnswer {
  readonly standing: Standing;
}

export interface Answered extends Answering<AnswerStanding> {
  readonly earlier: Earlier;
}

export interface AnswerWish {
  readonly from?: 'this-sheet' | 'any-sheet';
  /** What was kept of the sheet last, as the book has it. */
  readonly kept?: KeptStanding | undefined;
}

/** What decides how a sheet stands comes with the first answer, not with the page. */
const weighing = () => fetchPart(() => import('../../core/standing/standingOfSheet.ts'));

/**
 * The study's answer with what earlier sheets taught, reckoned off the page's thread after each change. Nothing is
 * reckoned until something of this sheet was said, or with `from: 'any-sheet'` of an earlier one.
 */
export const useAnswer = (
  study: Study,
  { from = 'this-sheet', kept }: AnswerWish = {},
): Answered => {
  const { model } = useWorkshop();
  const earlier = useEarlier(study);
  const { sheets, state } = earlier;
  const question = useSame(
    useMemo(
      () => ({
        study: toCutStudy(study),
        aim: study.aim,
        earlier: sheets,
        sheet: study,
        ...(kept === undefined ? {} : { kept }),
      }),
      [study, sheets, kept],
    ),
  );
  const ask = useCallback(
    async ({ sheet, kept: before, ...asked }: typeof question): Promise<AnswerStanding> => {
      const [answer, { standingOfSheet }] = await Promise.all([model.fit(asked), weighing()]);
      return { ...answer, standing: standingOfSheet(sheet, answer, before) };
    },
    [model],
  );
  const worthAsking =
    saysSomething(question.study) || (from === 'any-sheet' && question.earlier.length > 0);
  return { ...useLatest(question, worthAsking, state !== 'asking', ask), earlier };
};

/** The card that would teach most. */
export const useNextCard = (study: Study, wish: NextCardWish): Answering<NextCardAnswer> => {
  const { model } = useWorkshop();
  const { sheets, state } = useEarlier(study);
  const { cellsWanted, settingsAtMost } = wish;
  const question = useMemo(
    () => ({ study: toCutStudy(study), earlier: sheets, cellsWanted, settingsAtMost }),
    [study, sheets, cellsWanted, settingsAtMost],
  );
  return useLatest(question, saysSomething(question.study), state !== 'asking', model.nextCard);
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
  /** False while something that belongs to the question is still on its way. */
  isWhole: boolean,
  ask: (question: Q) => Promise<T>,
): Answering<T> => {
  const [settled, setSettled] = useState<Settled<Q, T>>();
  const newest = useRef<Q>(undefined);
  const busy = useRef(false);
  useEffect(() => {
    newest.current = worthAsking && isWhole ? question : undefined;
    if (newest.current === undefined || busy.current) return;
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
  }, [question, worthAsking, isWhole, ask]);
  if (!worthAsking) return { answer: undefined, behind: false, broke: undefined };
  return {
    answer: settled?.answer,
    behind: settled?.question !== question,
    broke: settled?.broke,
  };
};
