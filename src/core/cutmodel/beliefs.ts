import type { Link } from './links.ts';
import type { NormalPrior } from './model.ts';
import type { RatePrior, ScalePrior } from './priorScales.ts';
import { priors } from './priors.ts';

/** What a study starts from of the things that stay alike from one batch of a material to the next. */
export interface Beliefs {
  readonly lnSigma: NormalPrior;
  readonly lnHangBand: NormalPrior;
  readonly powerExponent: NormalPrior;
  readonly sheetSd: ScalePrior;
  readonly flawsPerMetre: RatePrior;
  readonly links: Readonly<Record<Link['name'], number>>;
}

/** Where no earlier sheet taught anything. */
export const firstBeliefs: Beliefs = {
  lnSigma: priors.lnSigma,
  lnHangBand: priors.lnHangBand,
  powerExponent: priors.powerExponent,
  sheetSd: { mode: 0, scale: priors.sheetSdScale },
  flawsPerMetre: { mean: priors.flawsPerMetreMean, sd: priors.flawsPerMetreMean },
  links: priors.links,
};

export const beliefsOf = ({ beliefs = firstBeliefs }: { readonly beliefs?: Beliefs }): Beliefs =>
  beliefs;
