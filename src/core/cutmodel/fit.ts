import { beliefsOf } from './beliefs.ts';
import { compileStudy, type CompiledStudy } from './compileStudy.ts';
import type { CutStudy } from './cutStudy.ts';
import { decisionOn, type Decision } from './decision.ts';
import { evidenceIn, type Evidence } from './evidence.ts';
import { posteriorOf, type Posterior } from './posterior.ts';

/** A fit with what it was computed from, for those who go on computing (the next card, explanations). */
export interface Fit {
  readonly study: CutStudy;
  readonly compiled: CompiledStudy;
  readonly posterior: Posterior;
  readonly decision: Decision;
  readonly evidence: Evidence;
}

/** Points of the posterior for each link: enough for a 5 % quantile good to about 0.04 of the posterior's sd. */
const pointsPerLink = 1000;
/** A surprising card leaves few effective points; then the posterior is computed again with more. */
const fewEffectivePoints = 500;
const pointsPerLinkAgain = 5000;

export const fit = (study: CutStudy): Fit => {
  const compiled = compileStudy(study);
  const { links } = beliefsOf(study);
  const quick = posteriorOf(compiled.model, links, pointsPerLink);
  const posterior =
    quick.effectivePoints < fewEffectivePoints
      ? posteriorOf(compiled.model, links, pointsPerLinkAgain)
      : quick;
  return {
    study,
    compiled,
    posterior,
    decision: decisionOn(compiled, posterior, study.promise),
    evidence: evidenceIn(study),
  };
};
