import { beliefsOf } from './beliefs.ts';
import { compileStudy, type CompiledStudy } from './compileStudy.ts';
import type { CutStudy } from './cutStudy.ts';
import { decisionOn, type Decision } from './decision.ts';
import { evidenceIn, type Evidence } from './evidence.ts';
import { posteriorOf, usualLines, type Posterior } from './posterior.ts';

/** A fit with what it was computed from, for those who go on computing (the next card, explanations). */
export interface Fit {
  readonly study: CutStudy;
  readonly compiled: CompiledStudy;
  readonly posterior: Posterior;
  readonly decision: Decision;
  readonly evidence: Evidence;
}

/** A surprising card leaves few effective lines; then the posterior is computed again with more. */
const fewEffectiveLines = 100;
const linesAgain = 5 * usualLines;

export const fit = (study: CutStudy): Fit => {
  const compiled = compileStudy(study);
  const { links } = beliefsOf(study);
  const quick = posteriorOf(compiled.model, links);
  const posterior =
    quick.effectivePoints < fewEffectiveLines
      ? posteriorOf(compiled.model, links, linesAgain)
      : quick;
  return {
    study,
    compiled,
    posterior,
    decision: decisionOn(compiled, posterior, study.promise),
    evidence: evidenceIn(study),
  };
};
