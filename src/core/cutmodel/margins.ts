import type { Slopes } from './observed.ts';
import type { Layout, Model, ModelPriors, Observation } from './model.ts';
import type { Parameters } from './parameters.ts';

/** What of the margin only some studies have: thickness, passes, corners, air, batch. */
export const furtherMargin = (
  o: Observation,
  z: Float64Array,
  layout: Layout,
  p: Parameters,
  airSd: number,
): number => {
  let margin =
    -p.thicknessExponent * o.lnThickness +
    p.passesExponent * o.lnPasses -
    p.cornersExponent * o.lnCorners;
  if (layout.air >= 0 && o.air >= 0) margin += airSd * (z[layout.air + o.air] ?? NaN);
  if (layout.batch >= 0 && o.batch >= 0) margin += p.batchSd * (z[layout.batch + o.batch] ?? NaN);
  return margin;
};

/** Adds to the slope of a coordinate of z; nothing where the model has no such coordinate. */
export type AddSlope = (index: number, amount: number) => void;

/** What a prior of b above 0 and a habit add to the log density, with their slopes. */
export const addBounds = (
  { priors, habit }: Pick<Model, 'priors' | 'habit'>,
  layout: Layout,
  p: Parameters,
  add: AddSlope,
): number => {
  let sum = 0;
  // A wall instead of the edge at b = 0, so that a search is turned back rather than stopped.
  if (priors.powerExponentMayBeNegative !== true && p.powerExponent < 0.02) {
    const short = 0.02 - p.powerExponent;
    sum -= 5e4 * short * short;
    add(layout.powerExponent, 1e5 * short * priors.powerExponent.sd);
  }
  if (habit) {
    const off = (p.lnV50 + p.powerExponent * habit.lnPower - habit.mean) / habit.sd;
    sum -= 0.5 * off * off;
    add(layout.lnV50, (-off / habit.sd) * priors.lnV50.sd);
    add(layout.powerExponent, (-off / habit.sd) * habit.lnPower * priors.powerExponent.sd);
  }
  return sum;
};

/** Carries the slopes of `times` readings alike to all coordinates but the effects of sheets. */
export const addSlopes = (
  o: Observation,
  z: Float64Array,
  at: {
    readonly layout: Layout;
    readonly priors: ModelPriors;
    readonly p: Parameters;
    readonly slopes: Slopes;
  },
  times: number,
  add: AddSlope,
): void => {
  const { layout, priors, p, slopes } = at;
  const dm = times * slopes.margin;
  add(layout.lnV50, dm * priors.lnV50.sd);
  add(layout.powerExponent, dm * o.lnPower * priors.powerExponent.sd);
  add(layout.lnSigma, times * slopes.lnSigma * priors.lnSigma.sd);
  if ('sd' in priors.lnHangBand) {
    add(layout.lnHangBand, times * slopes.lnHangBand * priors.lnHangBand.sd);
  }
  add(layout.flaws, times * slopes.flaws * p.flawsSlope);
  add(layout.thicknessExponent, -dm * o.lnThickness * priors.thicknessExponent.sd);
  add(layout.passesExponent, dm * o.lnPasses * priors.passesExponent.sd);
  add(layout.cornersExponent, -times * slopes.outMargin * o.lnCorners * priors.cornersExponent.sd);
  if (layout.air >= 0 && o.air >= 0) add(layout.air + o.air, dm * priors.airSd);
  if (layout.batch >= 0 && o.batch >= 0) {
    add(layout.batch + o.batch, dm * p.batchSd);
    add(layout.batchSd, dm * (z[layout.batch + o.batch] ?? NaN) * p.batchSdSlope);
  }
};
