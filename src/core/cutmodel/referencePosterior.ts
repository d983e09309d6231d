import { normalQuantile } from '../../num/normal.ts';
import { weightedQuantiles } from '../../num/weightedQuantile.ts';
import { links } from './links.ts';
import type { Model, NormalPrior, Observation, ObservedOutcome } from './model.ts';
import { meanSdOf, posteriorOf } from './posterior.ts';

/** A small card with priors written out: one link (normal), no flaws, no misreading, no sheets. */
export interface ReferenceCase {
  readonly P0: number;
  readonly prior: {
    readonly a: NormalPrior;
    readonly b: NormalPrior;
    readonly lnSigma: NormalPrior;
    readonly lnDelta?: NormalPrior;
  };
  readonly deltaFixed?: number;
  readonly observations: readonly {
    readonly P: number;
    readonly v: number;
    readonly grade: 'out' | 'in' | 'hangs' | 'not';
  }[];
  readonly query: {
    readonly P: number;
    readonly target: number;
    readonly cells: readonly { readonly P: number; readonly v: number }[];
  };
}

interface Summary {
  readonly mean: number;
  readonly sd: number;
  readonly q025: number;
  readonly q05: number;
  readonly q50: number;
  readonly q95: number;
  readonly q975: number;
}

export interface ReferencePosterior {
  readonly a: Summary;
  readonly b: Summary;
  readonly sigma: Summary;
  readonly delta?: Summary;
  readonly v97: Summary;
  readonly predictiveOut: readonly number[];
  readonly logEvidence: number;
}

const outcomes: Readonly<Record<ReferenceCase['observations'][number]['grade'], ObservedOutcome>> =
  {
    out: 'out',
    in: 'not-out',
    hangs: 'hangs',
    not: 'stays',
  };

const linesForReference = 20_000;

/**
 * The cut model's posterior with the priors of a reference case, summarised on the scales such tables use:
 * the same engine as every answer, with other priors and more points.
 */
export const referencePosterior = (
  given: ReferenceCase,
  lines = linesForReference,
): ReferencePosterior & { readonly effectiveShare: number } => {
  const band = given.prior.lnDelta ?? { known: given.deltaFixed ?? 0 };
  const model: Model = {
    priors: {
      lnV50: given.prior.a,
      powerExponent: given.prior.b,
      lnSigma: given.prior.lnSigma,
      lnHangBand: band,
      thicknessExponent: { mean: 0, sd: 1 },
      passesExponent: { mean: 0, sd: 1 },
      cornersExponent: { mean: 0, sd: 1 },
      airSd: 1,
      flawsPerMetre: null,
      sheetSd: null,
      batchSd: null,
      misreading: 0,
      powerExponentMayBeNegative: true,
    },
    observations: given.observations.map(({ P, v, grade }): Observation => ({
      outcome: outcomes[grade],
      count: 1,
      lnSpeed: Math.log(v),
      lnPower: Math.log(P / given.P0),
      lnThickness: 0,
      lnPasses: 0,
      lnCorners: 0,
      lengths: 1,
      lengthM: 0.06,
      counted: false,
      air: -1,
      batch: -1,
      sheet: -1,
    })),
    airLevels: 0,
    batches: 0,
    sheets: 0,
  };
  const posterior = posteriorOf(model, { normal: 1 }, lines);
  const summary = (column: Float64Array): Summary => {
    const [q025 = 0, q05 = 0, q50 = 0, q95 = 0, q975 = 0] = weightedQuantiles(
      column,
      posterior.weight,
      [0.025, 0.05, 0.5, 0.95, 0.975],
    );
    return { ...meanSdOf(posterior, (i) => column[i] ?? NaN), q025, q05, q50, q95, q975 };
  };
  const lnSpeedHalf = (power: number, i: number): number =>
    (posterior.lnV50[i] ?? NaN) + (posterior.powerExponent[i] ?? NaN) * Math.log(power / given.P0);
  const z = normalQuantile(given.query.target);
  const normal = links[0];
  return {
    a: summary(posterior.lnV50),
    b: summary(posterior.powerExponent),
    sigma: summary(posterior.sigma),
    ...(given.prior.lnDelta ? { delta: summary(posterior.hangBand) } : {}),
    v97: summary(
      Float64Array.from(posterior.lnV50, (_, i) =>
        Math.exp(lnSpeedHalf(given.query.P, i) - z * (posterior.sigma[i] ?? NaN)),
      ),
    ),
    predictiveOut: given.query.cells.map(
      ({ P, v }) =>
        meanSdOf(
          posterior,
          (i) => normal?.cdf((lnSpeedHalf(P, i) - Math.log(v)) / (posterior.sigma[i] ?? NaN)) ?? 0,
        ).mean,
    ),
    logEvidence: posterior.logEvidence,
    effectiveShare: posterior.effectivePoints / lines,
  };
};
