import { useMemo } from 'react';
import type { Study } from '../../../core/study/study.ts';
import { questionStudy } from '../../../core/study/questionStudy.ts';
import { toCutStudy } from '../../../core/study/toCutStudy.ts';
import { ProblemNotice } from '../notice/Notice.tsx';

/** Settings that look like a slip of a key or a unit, as a question; each kind once. */
export const Questioned = ({ study }: { readonly study: Study }) => {
  const questions = useMemo(() => {
    const asked = questionStudy(toCutStudy(study)).map(({ problem }) => problem);
    return asked.filter(({ code }, i) => asked.findIndex((each) => each.code === code) === i);
  }, [study]);
  return questions.map((problem) => (
    <ProblemNotice key={problem.code} problem={problem} tone="care" />
  ));
};
