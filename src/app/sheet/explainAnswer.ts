import type { StudyExplained } from '../../core/explain/explainWithEarlier.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';
import { withMaterial } from '../sums/explainCutStudy.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { Study } from '../../core/study/study.ts';
import { readWithHistory, type EarlierSheetsWish } from '../shared/history.ts';
import type { AskingPorts } from '../ports/ports.ts';

/** Why a stored study's answer is what it is. Refuses: `study-not-found`, what `acceptMaterial` and `Model` refuse. */
export const explainAnswer = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  studyId: string,
  wish: EarlierSheetsWish = {},
): Promise<Outcome<StudyExplained & { readonly study: Study }>> => {
  const found = await readWithHistory({ store }, studyId, wish);
  if (!found.ok) return found;
  const { study, earlier } = found.value;
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted;
  const explained = await model.ask('explainStudy', { study, earlier }, studyId);
  if (!explained.ok) return explained;
  const { cut, explanation } = explained.value;
  return done({ study, cut, explanation: withMaterial(explanation, accepted.value) });
};
