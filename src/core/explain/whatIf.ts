import type { Fit } from '../cutmodel/fit.ts';
import { links, type Link } from '../cutmodel/links.ts';
import type { ModelPriors } from '../cutmodel/model.ts';
import type { Posterior } from '../cutmodel/posterior.ts';
import type { SpeedExplained, WhatIf, WhatIfName } from './explanation.ts';
import { speedFrom, type Baseline } from './speedFrom.ts';

/**
 * The answer under other priors, other misreading and each link alone. Seven fits: ~0.15 s; those for which there is no time
 * are named.
 */
export const whatIf = (
  fitted: Fit,
  baseline: Baseline,
): Pick<SpeedExplained, 'whatIf' | 'untried'> => {
  const under = (name: WhatIfName, posterior: Posterior): WhatIf => {
    const { speedMmPerS, shiftPct } = speedFrom(fitted, baseline, {
      study: fitted.study,
      posterior,
    });
    return { name, speedMmPerS, shiftPct };
  };
  const { model } = fitted.compiled;
  const priors = otherPriors(model.priors);
  const { fits } = baseline;
  const underLinks = links.flatMap((link) => {
    const posterior = underLink(baseline.posterior, link);
    return posterior === null ? [] : [under(`${link.name}-alone`, posterior)];
  });
  if (!fits.take(priors.length))
    return { whatIf: underLinks, untried: priors.map(([name]) => name) };
  return {
    whatIf: [
      ...priors.map(([name, changed]) => under(name, fits.fit({ ...model, priors: changed }))),
      ...underLinks,
    ],
    untried: [],
  };
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
