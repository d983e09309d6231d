import { beliefsOf } from './beliefs.ts';
import { compileStudy, type CompiledStudy } from './compileStudy.ts';
import type { CutStudy } from './cutStudy.ts';
import type { Decision } from './decision.ts';
import { decisionOn } from './decisionOn.ts';
import { evidenceIn, type Evidence } from './evidence.ts';
import type { Posterior } from './posterior.ts';
import { hasManySheets, lastBatchOf, type LastBatch } from './lastBatch.ts';
import type { Effort } from './posteriorOfMany.ts';
import { orderStages, type OrderStage } from './orderByOrder.ts';
import { rememberNewest } from './rememberNewest.ts';
import { settledPosterior } from './settledPosterior.ts';

/** A fit with what it was computed from, for those who go on computing (the next card, explanations). */
export interface Fit {
  /** What it is the fit of: the study that was given, or its last batch with those before it as earlier sheets. */
  readonly study: CutStudy;
  /** Where each of its cells stands in the study that was given. */
  readonly cellIndices: readonly number[];
  readonly compiled: CompiledStudy;
  readonly posterior: Posterior;
  readonly decision: Decision;
  readonly evidence: Evidence;
  /** How the study stood before and after each of its last orders that may move the answer one way only. Absent: none. */
  readonly stages?: readonly FitStage[];
}

/** A fit, wherever its cells stand. */
export type FittedStudy = Omit<Fit, 'cellIndices'>;

/** A fit, as far as a speed at a power is asked of it. */
export type FitToAsk = Pick<Fit, 'decision' | 'evidence' | 'study'>;

interface FitStage {
  readonly verdict: OrderStage['verdict'];
  readonly before: Fit;
  readonly after: FitToAsk;
  readonly follows: boolean;
}

/**
 * `effort`: of a posterior with its sheets integrated, where less than an answer's will do; orders are fitted with that of an
 * answer. A study of 24 cells takes some 20 ms; with orders each of the last that may move the answer one way only takes about
 * 0.1 s more.
 */
export const fit = (study: CutStudy, effort?: Effort): Fit => {
  const known = new Map<CutStudy['tallies'][number] | undefined, Fit>();
  const stageOf = (one: CutStudy): Fit => {
    const before = known.get(one.tallies.at(-1));
    if (before) return before;
    const fitted = one.tallies.length > 0 ? fitOfOrders(one) : fitAlone(one, effort);
    known.set(one.tallies.at(-1), fitted);
    return fitted;
  };
  const fitted = stageOf(study);
  const stages = orderStages(study).map(({ verdict, before, after, follows }) => ({
    verdict,
    before: stageOf(before),
    after: stageOf(after),
    follows,
  }));
  return stages.length === 0 ? fitted : { ...fitted, stages };
};

/** All batches together where they are few and that settles, else by the last of them. */
const fitAlone = (study: CutStudy, effort?: Effort): Fit => {
  const whole = (): Fit =>
    fitOf({ study, cellIndices: study.cells.map((_, index) => index) }, effort);
  if (hasManySheets(study)) {
    const apart = lastBatchOf(study);
    return apart === null ? whole() : fitOf(apart, effort);
  }
  // What earlier batches teach may take fits of its own: it is asked for only where it is needed.
  const together = whole();
  if (together.posterior.converged) return together;
  const apart = lastBatchOf(study);
  return apart === null ? together : fitOf(apart, effort);
};

const fitOf = ({ study, cellIndices }: LastBatch, effort?: Effort): Fit => {
  const compiled = compileStudy(study);
  const posterior = settledPosterior(compiled.model, beliefsOf(study).links, effort);
  return {
    study,
    cellIndices,
    compiled,
    posterior,
    decision: decisionOn(compiled, posterior, study.promise),
    evidence: evidenceIn(study),
  };
};

/** The same for a study with orders, remembered: the next order is fitted beside what stood before it. */
const fitOfOrders = rememberNewest((study: CutStudy) => fitAlone(study));
