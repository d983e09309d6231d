import { compileStudy } from './compileStudy.ts';
import type { Fit } from './fit.ts';
import type { Model } from './model.ts';
import { posteriorOf } from './posterior.ts';
import { priors } from './priors.ts';

/** Whether what this sheet shows is what earlier sheets let expect. */
export interface EarlierVerdict {
  readonly disagrees: boolean;
  /** How many times likelier the readings of this sheet are without the earlier sheets than with them; below 1: less likely. */
  readonly oddsAgainst: number;
}

/**
 * At these odds against them an answer stops leaning on earlier sheets. Were they of the same kind, the odds would reach
 * k with a probability of at most 1/k, however often one looks, since their expectation is 1 (Ville 1939; as a prior check:
 * Box 1980, J. R. Stat. Soc. A 143; as a switch from history to none: Schmidli et al. 2014, Biometrics 70).
 */
export const oddsThatPart = 20;

/**
 * Holds this sheet's cells, tallies and all against what earlier sheets alone let expect:
 * odds = p(own | no history) / p(own | history), p(own | history) = Z(both)/Z(history).
 * `alone` is the fit of the same study without history. Costs one posterior (~20 ms).
 */
export const earlierAgreement = (found: Fit, alone: Fit): EarlierVerdict => {
  const { model } = found.compiled;
  const own = compileStudy({ ...found.study, history: [] }).model;
  if (own.observations.length === 0) return { disagrees: false, oddsAgainst: 1 };
  const past = posteriorOf(historyAlone(found), priors.links, pointsPerLink);
  if (!past.converged || !alone.posterior.converged) return { disagrees: false, oddsAgainst: 1 };
  const before = model.habit === undefined ? 0 : habitAlone(model);
  const withHistory = found.posterior.logEvidence - past.logEvidence;
  const without = alone.posterior.logEvidence - before;
  const oddsAgainst = Math.exp(without - withHistory);
  return { disagrees: oddsAgainst >= oddsThatPart, oddsAgainst };
};

const pointsPerLink = 1000;

const historyAlone = ({ compiled }: Fit): Model => {
  const counts = compiled.model.observations.map(() => 0);
  for (const index of compiled.observationOfEarlier) {
    if (index >= 0) counts[index] = (counts[index] ?? 0) + 1;
  }
  return {
    ...compiled.model,
    observations: compiled.model.observations.flatMap((cut, i) =>
      (counts[i] ?? 0) > 0 ? [{ ...cut, count: counts[i] ?? 0 }] : [],
    ),
  };
};

/** ln of what the habit's own belief takes from the prior, so that it does not count as a reading. */
const habitAlone = (model: Model): number => {
  const bare = { ...model, observations: [], batches: 0, sheets: 0 };
  return posteriorOf(bare, priors.links, pointsPerLink).logEvidence;
};
