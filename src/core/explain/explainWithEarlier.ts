import type { CutStudy } from '../cutmodel/cutStudy.ts';
import { answeredWithEarlier } from '../study/answerWithEarlier.ts';
import type { EarlierSheet } from '../study/earlierSheet.ts';
import type { Study } from '../study/study.ts';
import { cellOrigins, toCutStudy } from '../study/toCutStudy.ts';
import { explain } from './explain.ts';
import type { Explanation } from './explanation.ts';

/** A study as the model took it, and why its answer is what it is. */
export interface StudyExplained {
  readonly cut: CutStudy;
  readonly explanation: Explanation;
}

/** Why a study's answer is what it is, with what earlier sheets taught: the one function for page and server. ~1 s. */
export const explainWithEarlier = (
  study: Study,
  earlier: readonly EarlierSheet[],
): StudyExplained => {
  const cut = toCutStudy(study);
  const origins = cellOrigins(study);
  const { fitted, answer } = answeredWithEarlier(cut, study.aim, earlier);
  const cardOf = (index: number): string =>
    `card ${origins[fitted.cellIndices[index] ?? index]?.cardCode ?? ''}`;
  return { cut, explanation: explain(fitted, answer, { cardOf }) };
};
