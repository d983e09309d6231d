import { priorMedianV50MmPerS, priors } from '../../src/core/cutmodel/priors.ts';
import { thicknessOf } from '../thickness.ts';
import type { VisibleWorkshop } from '../workshop.ts';

/** What a method that places its cells one by one has to be told: where to look, and a guess of the scatter. */
export interface Beforehand {
  readonly lnV50: number;
  readonly lnV50Sd: number;
  readonly sigma: number;
  /** The range in which ln v50 is looked for: two standard deviations either way. */
  readonly least: number;
  readonly most: number;
}

/** The same beliefs as the model's own priors, so that no method starts poorer than another. */
export const beforehand = (shop: VisibleWorkshop): Beforehand => {
  const lnV50 = Math.log(
    priorMedianV50MmPerS(shop.stock.material, thicknessOf(shop), shop.typicalPowerPct / 100),
  );
  const reach = 2 * priors.lnV50Sd;
  return {
    lnV50,
    lnV50Sd: priors.lnV50Sd,
    sigma: Math.exp(priors.lnSigma.mean),
    least: lnV50 - reach,
    most: lnV50 + reach,
  };
};
