import type { CutStudy } from '../core/cutmodel/cutStudy.ts';
import type { FitAnswer } from '../core/cutmodel/fitAnswer.ts';
import { fitStudy } from '../core/cutmodel/fitStudy.ts';
import { questionStudy } from '../core/study/questionStudy.ts';

/** The answer to a study, and before all other warnings a question about each setting that looks mistyped. */
export const answerCutStudy = (study: CutStudy): FitAnswer => withQuestions(study, fitStudy(study));

/** The same for an answer that is there. */
export const withQuestions = <A extends FitAnswer>(study: CutStudy, answer: A): A => {
  const questions = questionStudy(study).map(({ problem }) => problem);
  return { ...answer, warnings: [...onceEach(questions), ...answer.warnings] };
};

/** Twelve cells with one slip are one question. */
const onceEach = (problems: FitAnswer['warnings']): FitAnswer['warnings'] => {
  const seen = new Set<string>();
  return problems.filter((problem) => {
    const key = JSON.stringify(problem);
    return !seen.has(key) && seen.add(key);
  });
};
