import { useMemo } from 'react';
import type { EarlierSheet } from '../../core/study/earlierSheet.ts';
import type { Study } from '../../core/study/study.ts';
import type { QuestionOf } from '../worker/calls.ts';
import { useCall, type Called } from './useCall.ts';

type WhyQuestion = QuestionOf<'explain'>;

/** Taps that follow one another are waited out this long. */
const patienceMs = 300;

/** Why the study's answer is what it is, calculated on a thread of its own. */
export const useWhy = (
  study: Study,
  earlier: readonly EarlierSheet[],
): Called<'explain', WhyQuestion> => {
  const question = useMemo(() => ({ study, earlier }), [study, earlier]);
  return useCall('explain', question, patienceMs);
};
