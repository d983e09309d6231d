import { beliefsOf } from './beliefs.ts';
import { compileStudy, type CompiledStudy } from './compileStudy.ts';
import type { CutStudy } from './cutStudy.ts';
import { decisionOn, type Decision } from './decision.ts';
import { evidenceIn, type Evidence } from './evidence.ts';
import type { Posterior } from './posterior.ts';
import { settledPosterior } from './settledPosterior.ts';

/** A fit with what it was computed from, for those who go on computing (the next card, explanations). */
export interface Fit {
  readonly study: CutStudy;
  readonly compiled: CompiledStudy;
  readonly posterior: Posterior;
  readonly decision: Decision;
  readonly evidence: Evidence;
}

export const fit = (study: CutStudy): Fit => {
  const compiled = compileStudy(study);
  const posterior = settledPosterior(compiled.model, beliefsOf(study).links);
  return {
    study,
    compiled,
    posterior,
    decision: decisionOn(compiled, posterior, study.promise),
    evidence: evidenceIn(study),
  };
};
