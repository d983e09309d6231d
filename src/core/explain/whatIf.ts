import type { Fit } from '../cutmodel/fit.ts';
import { links, type Link } from '../cutmodel/links.ts';
import type { ModelPriors } from '../cutmodel/model.ts';
import type { Posterior } from '../cutmodel/posterior.ts';
import type { WhatIf, WhatIfName } from './explanation.ts';
import { finePosterior } from './finePosterior.ts';
import type { FitsAllowed } from './fitsAllowed.ts';
import { speedFrom, type Baseline } from './speedFrom.ts';

/**
 * The answer under other priors, other misreading and each link alone. Seven fits: ~0.15 s; where they would take too long,
 * the links alone.
 */
export const whatIf = (found: Fit, baseline: Baseline, fits: FitsAllowed): readonly WhatIf[] => {
  const under = (name: WhatIfName, posterior: Posterior): WhatIf => {
    const { speedMmPerS, shiftPct } = speedFrom(found, baseline, {
      study: found.study,
      posterior,
    });
    return { name, speedMmPerS, shiftPct };
  };
  const { model } = found.compiled;
  const priors = otherPriors(model.priors);
  const tried = fits.take(priors.length) ? priors : [];
  return [
    ...tried.map(([name, changed]) =>
      under(name, finePosterior({ ...model, priors: changed }, found.study)),
    ),
    ...links.flatMap((link) => {
      const posterior = underLink(baseline.posterior, link);
      return posterior === null ? [] : [under(`${link.name}-alone`, posterior)];
    }),
  ];
};

const otherPriors = (own: ModelPriors): readonly (readonly [WhatIfName, ModelPriors])[] => {
  const { mean, sd } = own.lnSigma;
  const scatter = (lnSigma: ModelPriors['lnSigma']): ModelPriors => ({ ...own, lnSigma });
  return [
    ['scatter-twice-as-unsure', scatter({ mean, sd: 2 * sd })],
    ['scatter-half-as-unsure', scatter({ mean, sd: sd / 2 })],
    ['scatter-expected-twice', scatter({ mean: mean + Math.LN2, sd })],
    ['scatter-expected-half', scatter({ mean: mean - Math.LN2, sd })],
    [
      'changeover-twice-as-unsure',
      { ...own, lnV50: { mean: own.lnV50.mean, sd: 2 * own.lnV50.sd } },
    ],
    ['no-grade-misread', { ...own, misreading: 0 }],
    ['thrice-as-many-misread', { ...own, misreading: 3 * own.misreading }],
  ];
};

/** The posterior under one link alone: its points are those of that link. */
const underLink = (posterior: Posterior, link: Link): Posterior | null => {
  const index = links.indexOf(link);
  const kept = posterior.weight.map((w, i) => (posterior.link[i] === index ? w : 0));
  const sum = kept.reduce((all, w) => all + w, 0);
  return sum > 0 ? { ...posterior, weight: kept.map((w) => w / sum) } : null;
};
