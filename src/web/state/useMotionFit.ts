import { useCallback, useState } from 'react';
import type { MotionFit, TimedJob } from '../../core/motion/fitMotion.ts';
import type { Outcome } from '../../core/problem.ts';
import { useCall } from './useCall.ts';

/** How far the question is. */
export type MotionFitting =
  | { readonly at: 'unasked' | 'working' }
  | { readonly at: 'fitted'; readonly fit: Outcome<MotionFit> }
  | { readonly at: 'broke'; readonly message: string };

export interface UseMotionFit {
  readonly fitting: MotionFitting;
  readonly ask: (jobs: readonly TimedJob[]) => void;
  /** Ends the work under way and takes its answer away. */
  readonly forget: () => void;
}

/** Works out how a machine moves, on a thread of its own. */
export const useMotionFit = (): UseMotionFit => {
  const [jobs, setJobs] = useState<readonly TimedJob[]>();
  const { answered, broke, isBusy } = useCall('motion', jobs);
  // The same times asked again are another question.
  const ask = useCallback((asked: readonly TimedJob[]): void => setJobs([...asked]), []);
  const forget = useCallback((): void => setJobs(undefined), []);
  const fitting = ((): MotionFitting => {
    if (jobs === undefined) return { at: 'unasked' };
    if (isBusy) return { at: 'working' };
    if (broke !== undefined) return { at: 'broke', message: broke };
    return answered === undefined ? { at: 'working' } : { at: 'fitted', fit: answered.answer };
  })();
  return { fitting, ask, forget };
};
