import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import type { FitAnswer } from '../../core/cutmodel/fitAnswer.ts';
import { fitStudy } from '../../core/cutmodel/fitStudy.ts';
import { done, type Outcome, type Problem } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import type { StockCode } from '../../core/problems/stock.ts';
import { answerWithEarlier, type StudyAnswer } from '../../core/study/answerWithEarlier.ts';
import { questionStudy } from '../../core/study/questionStudy.ts';
import type { AnswerQuestion } from './standingAsKnown.ts';

/**
 * The answer to a study. Before all other warnings stand what is to be said of its material and a question about each
 * setting that looks mistyped. Refuses: what `acceptMaterial` refuses.
 */
export const answerCutStudy = (study: CutStudy): Outcome<FitAnswer> => {
  const accepted = acceptMaterial(study.stock);
  return accepted.ok ? done(withQuestions(study, fitStudy(study), accepted.value)) : accepted;
};

/** The same by an aim, with what earlier sheets taught. */
export const answerWithHistory = ({ cut, aim, earlier }: AnswerQuestion): Outcome<StudyAnswer> => {
  const accepted = acceptMaterial(cut.stock);
  return accepted.ok
    ? done(withQuestions(cut, answerWithEarlier(cut, aim, earlier), accepted.value))
    : accepted;
};

/** The same for an answer that is there; `ofMaterial` as the gate gave it. */
const withQuestions = <A extends FitAnswer>(
  study: CutStudy,
  answer: A,
  ofMaterial: readonly Problem[],
): A => {
  const questions = questionStudy(study).map(({ problem }) => problem);
  return {
    ...answer,
    warnings: [...ofMaterial, ...airRemarks(study), ...onceEach(questions), ...answer.warnings],
  };
};

/** What is to be said of cutting with the air off, where that is what the answer is for. */
export const airRemarks = ({ cells }: CutStudy): readonly Problem[] =>
  cells.at(-1)?.air === 'off' ? [{ code: 'air-off-burns' satisfies StockCode, params: {} }] : [];

/** Twelve cells with one slip are one question. */
const onceEach = (problems: FitAnswer['warnings']): FitAnswer['warnings'] => {
  const seen = new Set<string>();
  return problems.filter((problem) => {
    const key = JSON.stringify(problem);
    return !seen.has(key) && seen.add(key);
  });
};
