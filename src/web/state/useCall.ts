import { useEffect, useState } from 'react';
import type { AnswerOf, CallName, QuestionOf, StageOf } from '../worker/calls.ts';
import { startWorker } from './startWorker.ts';
import { openThread } from './thread.ts';

export interface Called<Call extends CallName, Question> {
  /** The last answer and what it is to; stays while a newer question is worked on. */
  readonly answered: { readonly to: Question; readonly answer: AnswerOf<Call> } | undefined;
  /** How the last question broke, if it did. */
  readonly broke: string | undefined;
  /** Something is asked that is not answered yet. */
  readonly isBusy: boolean;
  /** It is worked on, and not only waited for what follows it; with the last that was said of it. */
  readonly working: { readonly stage: StageOf<Call> | undefined } | undefined;
}

interface State<Call extends CallName, Question> {
  readonly answered?: Called<Call, Question>['answered'];
  readonly settled?: Question | undefined;
  readonly broke?: string | undefined;
  readonly working?: { readonly on: Question; readonly stage: StageOf<Call> | undefined };
}

/**
 * Asks one question on a thread of its own, which a newer question ends at once; nothing where there is no question. Give
 * the same object for the same question. `patienceMs`: questions that follow one another faster than that are passed over.
 */
export const useCall = <Call extends CallName, Question extends QuestionOf<Call> & object>(
  call: Call,
  question: Question | undefined,
  patienceMs = 0,
): Called<Call, Question> => {
  const [state, setState] = useState<State<Call, Question>>({});
  useEffect(() => {
    if (question === undefined) return;
    let end: (() => void) | undefined;
    const ask = (): void => {
      const thread = openThread(startWorker[call]);
      ({ end } = thread);
      const worksOn = (stage?: StageOf<Call>): void =>
        setState((before) => ({ ...before, working: { on: question, stage } }));
      worksOn();
      thread
        .ask(call, question, worksOn)
        .then(
          (answer) => setState({ answered: { to: question, answer }, settled: question }),
          (error: unknown) =>
            setState(({ answered }) => ({
              answered,
              settled: question,
              broke: error instanceof Error ? error.message : String(error),
            })),
        )
        .finally(thread.end);
    };
    const timer = setTimeout(ask, patienceMs);
    return () => {
      clearTimeout(timer);
      end?.();
    };
  }, [call, question, patienceMs]);
  const { answered, settled, broke, working } = state;
  return {
    answered,
    broke,
    isBusy: question !== undefined && settled !== question,
    working: question !== undefined && working?.on === question ? working : undefined,
  };
};
