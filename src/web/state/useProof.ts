import { useCallback, useState } from 'react';
import type { QuestionOf, StageOf } from '../worker/calls.ts';
import { useCall, type Called } from './useCall.ts';

export interface Proving<Q> {
  /** What is under way; undefined: nothing. */
  readonly stage: StageOf<'prove'> | undefined;
  /** The last proof and what it is of; stays on screen while a newer one is worked out. */
  readonly proven: Called<'prove', Q>['answered'];
  /** What is asked now was stopped, and is not proven. */
  readonly isStopped: boolean;
  readonly broke: string | undefined;
  /** Ends the work under way. */
  readonly stop: () => void;
  /** Begins anew with what was stopped. */
  readonly again: () => void;
}

/** Changes of a setting as it is typed are waited out this long. */
const patienceMs = 350;

/** Proves a drawing on a thread of its own, which a newer question or `stop` ends at once. */
export const useProof = <Q extends QuestionOf<'prove'>>(question: Q | undefined): Proving<Q> => {
  const [stopped, setStopped] = useState<Q>();
  const isStopped = stopped !== undefined && stopped === question;
  const asked = isStopped ? undefined : question;
  const { answered, broke, isBusy, working } = useCall<'prove', Q>('prove', asked, patienceMs);
  return {
    stage: isBusy && working !== undefined ? (working.stage ?? 'reading') : undefined,
    proven: answered,
    isStopped,
    broke: working === undefined || !isBusy ? broke : undefined,
    stop: useCallback(() => setStopped(question), [question]),
    again: useCallback(() => setStopped(undefined), []),
  };
};
