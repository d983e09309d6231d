import { done, type Outcome } from '../../core/problem.ts';
import type { StudyAnswer } from '../../core/study/answerWithEarlier.ts';
import type { Standing } from '../../core/standing/standing.ts';
import { standingOfSheet } from '../../core/standing/standingOfSheet.ts';
import { toCutStudy } from '../../core/study/toCutStudy.ts';
import { readKept, withStanding } from '../shared/entryStanding.ts';
import { readWithHistory, type EarlierSheetsWish } from '../shared/history.ts';
import type { AskingPorts } from '../ports/ports.ts';

/**
 * What a study says, by its aim and with what earlier sheets taught: the setting with its promise, or why there is none
 * yet; and how the sheet stands. Refuses: `study-not-found`, what `acceptMaterial` and `Model` refuse.
 */
export const answerStudy = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  studyId: string,
  wish: EarlierSheetsWish = {},
): Promise<Outcome<StudyAnswer & { readonly standing: Standing }>> => {
  const found = await readWithHistory({ store }, studyId, wish);
  if (!found.ok) return found;
  const { study, earlier } = found.value;
  const question = { cut: toCutStudy(study), aim: study.aim, earlier };
  const answered = await model.ask('answerStudy', question, studyId);
  if (!answered.ok) return answered;
  const kept = await store.read(async (session) => {
    const entry = await session.keptFrom(studyId);
    return entry === undefined ? undefined : readKept(session, entry);
  });
  const asKept = kept === undefined ? undefined : await withStanding(model, kept);
  return done({ ...answered.value, standing: standingOfSheet(study, answered.value, asKept) });
};
