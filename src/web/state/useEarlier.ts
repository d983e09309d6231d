import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import { historyWishOf } from '../../core/study/historyWish.ts';
import type { Study } from '../../core/study/study.ts';
import { useHistory } from './queries.ts';

/** What earlier sheets of the study's material taught, as far as this page knows and is to use it. */
export interface Earlier {
  /** What the model is given: nothing where it is left out. */
  readonly sheets: readonly EarlierSheet[];
  /** What is known, used or not. */
  readonly known: readonly EarlierSheet[];
  /** `away`: the server did not say; answers do without. */
  readonly state: 'asking' | 'told' | 'away';
  readonly isLeftOut: boolean;
}

/** An answer does not wait longer than this for what earlier sheets taught. */
const patienceMs = 1000;
const none: readonly EarlierSheet[] = [];

export const useEarlier = (study: Study): Earlier => {
  const { id } = study;
  const { data, isError, isPending } = useHistory(historyWishOf(study));
  const isLate = useIsLate(isPending);
  const isLeftOut = useSyncExternalStore(subscribe, () => leftOut.has(id));
  const known = data?.sheets ?? none;
  const state = data !== undefined ? 'told' : isError || isLate ? 'away' : 'asking';
  return useMemo(
    () => ({ sheets: isLeftOut ? none : known, known, state, isLeftOut }),
    [known, state, isLeftOut],
  );
};

const useIsLate = (waits: boolean): boolean => {
  const [isLate, setIsLate] = useState(false);
  useEffect(() => {
    if (!waits) return;
    const timer = setTimeout(() => setIsLate(true), patienceMs);
    return () => {
      clearTimeout(timer);
      setIsLate(false);
    };
  }, [waits]);
  return isLate;
};

/** Studies whose answers are to do without, by their ids; forgotten with the page. */
const leftOut = new Set<string>();
const listeners = new Set<() => void>();

const subscribe = (heard: () => void): (() => void) => {
  listeners.add(heard);
  return () => listeners.delete(heard);
};

/** Has every answer of this study on this page lean on earlier sheets, or not. */
export const leaveEarlierOut = (studyId: string, isOut: boolean): void => {
  if (isOut) leftOut.add(studyId);
  else leftOut.delete(studyId);
  for (const heard of listeners) heard();
};

/** What a study is kept with, so that the book's promise is the one that was shown. */
export const earlierSheetsFor = (studyId: string): 'with' | 'without' =>
  leftOut.has(studyId) ? 'without' : 'with';
