import { explainWithEarlier, type StudyExplained } from '../core/explain/explainWithEarlier.ts';
import { acceptMaterial } from '../core/stock/acceptMaterial.ts';
import { withMaterial } from './explainCutStudy.ts';
import { done, type Outcome } from '../core/problem.ts';
import type { Study } from '../core/study/study.ts';
import { readWithHistory, type EarlierSheetsWish } from './gatherHistory.ts';
import type { Ports } from './ports.ts';

/** Why a stored study's answer is what it is. Refuses: `study-not-found`, what `acceptMaterial` refuses. */
export const explainAnswer = async (
  ports: Pick<Ports, 'store'>,
  studyId: string,
  wish: EarlierSheetsWish = {},
): Promise<Outcome<StudyExplained & { readonly study: Study }>> => {
  const found = await readWithHistory(ports, studyId, wish);
  if (!found.ok) return found;
  const { study, earlier } = found.value;
  const accepted = acceptMaterial(study.stock);
  if (!accepted.ok) return accepted;
  const { cut, explanation } = explainWithEarlier(study, earlier);
  return done({ study, cut, explanation: withMaterial(explanation, accepted.value) });
};
