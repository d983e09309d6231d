import type { Layout, ModelPriors } from './model.ts';
import { quickRateAt, rateAt, scaleAt, scaleSlopeAt } from './priorScales.ts';

/** The parameters on their own scales, and how fast each of the curved ones changes with its z. */
export interface Parameters {
  lnV50: number;
  powerExponent: number;
  sigma: number;
  hangBand: number;
  flawsPerMetre: number;
  flawsSlope: number;
  sheetSd: number;
  sheetSdSlope: number;
  batchSd: number;
  batchSdSlope: number;
  thicknessExponent: number;
  passesExponent: number;
  cornersExponent: number;
}

export const blankParameters = (): Parameters => ({
  lnV50: 0,
  powerExponent: 0,
  sigma: 1,
  hangBand: 0,
  flawsPerMetre: 0,
  flawsSlope: 0,
  sheetSd: 0,
  sheetSdSlope: 0,
  batchSd: 0,
  batchSdSlope: 0,
  thicknessExponent: 0,
  passesExponent: 0,
  cornersExponent: 0,
});

/**
 * Reads z into `into` (reused, so that inner loops allocate nothing), without the slopes. A power exponent at or below 0 is
 * outside the prior: the caller gives it no weight.
 */
export const readParameters = (
  z: Float64Array,
  layout: Layout,
  priors: ModelPriors,
  into: Parameters,
): void => {
  const at = (index: number): number => z[index] ?? NaN;
  into.lnV50 = priors.lnV50.mean + priors.lnV50.sd * at(layout.lnV50);
  into.powerExponent =
    priors.powerExponent.mean + priors.powerExponent.sd * at(layout.powerExponent);
  into.sigma = Math.exp(priors.lnSigma.mean + priors.lnSigma.sd * at(layout.lnSigma));
  into.hangBand =
    'known' in priors.lnHangBand
      ? priors.lnHangBand.known
      : Math.exp(priors.lnHangBand.mean + priors.lnHangBand.sd * at(layout.lnHangBand));
  into.thicknessExponent =
    layout.thicknessExponent < 0
      ? priors.thicknessExponent.mean
      : priors.thicknessExponent.mean + priors.thicknessExponent.sd * at(layout.thicknessExponent);
  into.passesExponent =
    layout.passesExponent < 0
      ? priors.passesExponent.mean
      : priors.passesExponent.mean + priors.passesExponent.sd * at(layout.passesExponent);
  into.cornersExponent =
    layout.cornersExponent < 0
      ? priors.cornersExponent.mean
      : priors.cornersExponent.mean + priors.cornersExponent.sd * at(layout.cornersExponent);
  if (layout.flaws >= 0 && priors.flawsPerMetre !== null) {
    into.flawsPerMetre = quickRateAt(priors.flawsPerMetre, at(layout.flaws));
  }
  if (layout.sheetSd >= 0 && priors.sheetSd !== null) {
    into.sheetSd = scaleAt(priors.sheetSd, at(layout.sheetSd));
  }
  if (layout.batchSd >= 0 && priors.batchSd !== null) {
    into.batchSd = scaleAt(priors.batchSd, at(layout.batchSd));
  }
};

/** Adds to what {@link readParameters} read how fast the curved ones change. */
export const readSlopes = (
  z: Float64Array,
  layout: Layout,
  priors: ModelPriors,
  into: Parameters,
): void => {
  const at = (index: number): number => z[index] ?? NaN;
  if (layout.flaws >= 0 && priors.flawsPerMetre !== null) {
    into.flawsSlope = rateAt(priors.flawsPerMetre, at(layout.flaws)).slope;
  }
  if (layout.sheetSd >= 0 && priors.sheetSd !== null) {
    into.sheetSdSlope = scaleSlopeAt(priors.sheetSd, at(layout.sheetSd));
  }
  if (layout.batchSd >= 0 && priors.batchSd !== null) {
    into.batchSdSlope = scaleSlopeAt(priors.batchSd, at(layout.batchSd));
  }
};
