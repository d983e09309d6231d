import type { CutStudy } from '../../core/cutmodel/cutStudy.ts';
import { explainStudy } from '../../core/explain/explain.ts';
import type { Explanation } from '../../core/explain/explanation.ts';
import { done, type Outcome, type Problem } from '../../core/problem.ts';
import { acceptMaterial } from '../../core/stock/acceptMaterial.ts';

/** Why a study's answer is what it is; nothing is stored. Refuses: what `acceptMaterial` refuses. ~1 s. */
export const explainCutStudy = (study: CutStudy): Outcome<Explanation> => {
  const accepted = acceptMaterial(study.stock);
  return accepted.ok ? done(withMaterial(explainStudy(study), accepted.value)) : accepted;
};

/** What is to be said of the material stands before all other warnings. */
export const withMaterial = (
  { answer, ...explanation }: Explanation,
  ofMaterial: readonly Problem[],
): Explanation => ({
  ...explanation,
  answer: { ...answer, warnings: [...ofMaterial, ...answer.warnings] },
});
