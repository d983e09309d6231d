import type { Outcome } from '../core/problem.ts';
import type { StudyAnswer } from '../core/study/answerWithEarlier.ts';
import { toCutStudy } from '../core/study/toCutStudy.ts';
import { readWithHistory, type EarlierSheetsWish } from './gatherHistory.ts';
import type { AskingPorts } from './ports.ts';

/**
 * What a study says, by its aim and with what earlier sheets taught: the setting with its promise, or why there is none
 * yet. Refuses: `study-not-found`, what `acceptMaterial` and `Model` refuse.
 */
export const answerStudy = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  studyId: string,
  wish: EarlierSheetsWish = {},
): Promise<Outcome<StudyAnswer>> => {
  const found = await readWithHistory({ store }, studyId, wish);
  if (!found.ok) return found;
  const { study, earlier } = found.value;
  return model.ask('answerStudy', { cut: toCutStudy(study), aim: study.aim, earlier }, studyId);
};
