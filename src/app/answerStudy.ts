import type { FitAnswer } from '../core/cutmodel/fitAnswer.ts';
import { done, type Outcome } from '../core/problem.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import { answerCutStudy } from './answerCutStudy.ts';
import type { Ports } from './ports.ts';
import { readStudy } from './readStudy.ts';

/** What a study says: the setting with its promise, or why there is none yet. Refuses: `study-not-found`. */
export const answerStudy = async (
  ports: Pick<Ports, 'store'>,
  studyId: string,
): Promise<Outcome<FitAnswer>> => {
  const found = await readStudy(ports, studyId);
  return found.ok ? done(answerCutStudy(toCutStudy(found.value.study))) : found;
};
