import { beliefsOf } from './beliefs.ts';
import type { Fit } from './fit.ts';
import type { Model } from './model.ts';
import { meanSdOf, posteriorOf, type Posterior } from './posterior.ts';
import { presentLnV50 } from './presentLevel.ts';

/** Whether what this sheet shows is what earlier sheets let expect. */
export interface EarlierVerdict {
  readonly disagrees: boolean;
  /** Changeover of this sheet by its own readings against what earlier sheets let expect: difference in ln, and in sd. */
  readonly level: Difference;
  /** Scatter likewise. */
  readonly scatter: Difference;
}

interface Difference {
  readonly ln: number;
  /** The difference over its standard deviation under what earlier sheets let expect. */
  readonly z: number;
}

/**
 * From so many standard deviations an answer stops leaning: once in 200 for each of the two, were they normal. Its rate of
 * false alarms is measured by simulation (`bench/explain/earlierRule.ts`).
 */
const mostStandardDeviations = 2.8;

/**
 * A predictive check (Box 1980, J. R. Stat. Soc. A 143; conflict of prior and data: Evans & Moshonov 2006, Bayesian Anal. 1):
 * what earlier sheets alone let expect of a new sheet's changeover and scatter, held against what this sheet's own readings
 * say. `alone` is the fit of the same study without history. Costs one posterior (~20 ms).
 */
export const earlierAgreement = (fitted: Fit, alone: Fit): EarlierVerdict => {
  const past = posteriorOf(historyAlone(fitted), beliefsOf(fitted.study).links);
  if (
    !past.converged ||
    !alone.posterior.converged ||
    alone.compiled.model.observations.length === 0
  )
    return { disagrees: false, level: none, scatter: none };
  const level = differenceOf(
    levelIn(alone, alone.posterior),
    levelIn(fitted, past),
    alone.compiled.model.priors.lnV50.sd,
  );
  const scatter = differenceOf(
    scatterIn(alone.posterior),
    scatterIn(past),
    alone.compiled.model.priors.lnSigma.sd,
    alone.compiled.model.priors.lnSigma.mean,
  );
  return {
    disagrees: [level, scatter].some(({ z }) => Math.abs(z) >= mostStandardDeviations),
    level,
    scatter,
  };
};

const none: Difference = { ln: 0, z: 0 };

interface Known {
  readonly mean: number;
  readonly sd: number;
}

/**
 * What the readings say of a quantity lies between its prior and its posterior: precision and mean without the prior's share,
 * where the prior has a share that counts.
 */
const differenceOf = (
  own: Known,
  expected: Known,
  priorSd: number,
  priorMean = own.mean,
): Difference => {
  const precision = own.sd ** -2 - priorSd ** -2;
  // Little of it was learnt from this sheet: nothing to hold against anything.
  if (precision < leastPrecision * priorSd ** -2) return none;
  const byReadings = (own.mean / own.sd ** 2 - priorMean / priorSd ** 2) / precision;
  const ln = byReadings - expected.mean;
  return { ln, z: ln / Math.sqrt(1 / precision + expected.sd ** 2) };
};

/** As a share of the prior's precision. */
const leastPrecision = 0.2;

const levelIn = ({ compiled }: Fit, posterior: Posterior): Known => {
  const level = presentLnV50(compiled, posterior);
  return meanSdOf(posterior, (i) => level[i] ?? NaN);
};

const scatterIn = (posterior: Posterior): Known =>
  meanSdOf(posterior, (i) => Math.log(posterior.sigma[i] ?? NaN));

/** The model of both with the earlier sheets' readings alone; this sheet's batch is there as one that was never cut. */
const historyAlone = ({ compiled: { model, observationOfEarlier } }: Fit): Model => {
  const counts = model.observations.map(() => 0);
  for (const { observation, count } of observationOfEarlier) {
    if (observation >= 0) counts[observation] = (counts[observation] ?? NaN) + count;
  }
  return {
    ...model,
    observations: model.observations.flatMap((cut, i) =>
      (counts[i] ?? NaN) > 0 ? [{ ...cut, count: counts[i] ?? NaN }] : [],
    ),
  };
};
