import { done, type Outcome } from '../core/problem.ts';
import { acceptMaterial } from '../core/stock/acceptMaterial.ts';
import { answerWithEarlier, type StudyAnswer } from '../core/study/answerWithEarlier.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import { withQuestions } from './answerCutStudy.ts';
import { readWithHistory, type EarlierSheetsWish } from './gatherHistory.ts';
import type { Ports } from './ports.ts';

/**
 * What a study says, by its aim and with what earlier sheets taught: the setting with its promise, or why there is none
 * yet. Refuses: `study-not-found`, what `acceptMaterial` refuses.
 */
export const answerStudy = async (
  ports: Pick<Ports, 'store'>,
  studyId: string,
  wish: EarlierSheetsWish = {},
): Promise<Outcome<StudyAnswer>> => {
  const found = await readWithHistory(ports, studyId, wish);
  if (!found.ok) return found;
  const { study, earlier } = found.value;
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted;
  const cut = toCutStudy(study);
  return done(withQuestions(cut, answerWithEarlier(cut, study.aim, earlier), accepted.value));
};
