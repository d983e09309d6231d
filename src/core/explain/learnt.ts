import { compileStudy } from '../cutmodel/compileStudy.ts';
import { withoutEarlier } from '../cutmodel/cutStudy.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { knownPower } from '../cutmodel/knownPower.ts';
import { meanSdOf, type Posterior } from '../cutmodel/posterior.ts';
import { presentLnV50 } from '../cutmodel/presentLevel.ts';
import { meanSdOfScale } from '../cutmodel/priorScales.ts';
import type { Learnt, LearntName } from './explanation.ts';

interface Quantity {
  readonly name: LearntName;
  readonly priorMean: number;
  readonly priorSd: number;
  readonly valuesIn: (fitted: Fit) => Float64Array;
}

/**
 * How much of each quantity was learnt: 1 − var/prior var, over all that the fit knows and, where earlier sheets taught too,
 * by `alone`, the same study without them; absent where that fit would have taken too long.
 */
export const learntIn = (
  fitted: Fit,
  alone: Fit | undefined,
  powerPct: number,
): readonly Learnt[] =>
  quantitiesOf(fitted, powerPct).map(({ name, priorMean, priorSd, valuesIn }) => {
    const over = (fit: Fit) => {
      const values = valuesIn(fit);
      return meanSdOf(fit.posterior, (i) => values[i] ?? NaN);
    };
    const now = over(fitted);
    return {
      name,
      priorMean,
      priorSd,
      ...now,
      learntPct: learntPct(now.sd, priorSd),
      ...(alone === undefined ? {} : { learntByOwnPct: learntPct(over(alone).sd, priorSd) }),
    };
  });

const learntPct = (sd: number, priorSd: number): number =>
  Math.max(0, 100 * (1 - (sd / priorSd) ** 2));

type Column = (posterior: Posterior) => Float64Array;

const plain =
  (column: Column): Quantity['valuesIn'] =>
  ({ posterior }) =>
    column(posterior);

const logged =
  (column: Column): Quantity['valuesIn'] =>
  ({ posterior }) =>
    column(posterior).map(Math.log);

/** Only what the model has a place for. */
const quantitiesOf = (
  { study, compiled, posterior }: Fit,
  powerPct: number,
): readonly Quantity[] => {
  // What was expected before any sheet was cut, earlier ones included.
  const { priors } = compileStudy(withoutEarlier(study)).model;
  const { layout } = posterior;
  const quantity = (
    name: LearntName,
    prior: { readonly mean: number; readonly sd: number } | null,
    valuesIn: Quantity['valuesIn'],
  ): readonly Quantity[] =>
    prior === null ? [] : [{ name, priorMean: prior.mean, priorSd: prior.sd, valuesIn }];
  const { lnPower } = knownPower(compiled, powerPct);
  const { lnV50, powerExponent, lnHangBand } = priors;
  return [
    ...quantity(
      'changeover',
      {
        mean: lnV50.mean + powerExponent.mean * lnPower,
        sd: Math.hypot(lnV50.sd, powerExponent.sd * lnPower),
      },
      (fit) => {
        const there = knownPower(fit.compiled, powerPct).lnPower;
        const { powerExponent: b } = fit.posterior;
        return presentLnV50(fit.compiled, fit.posterior).map((v, i) => v + (b[i] ?? NaN) * there);
      },
    ),
    ...quantity(
      'scatter',
      priors.lnSigma,
      logged(({ sigma }) => sigma),
    ),
    ...quantity(
      'hang-band',
      'known' in lnHangBand ? null : lnHangBand,
      logged(({ hangBand }) => hangBand),
    ),
    ...quantity(
      'power',
      powerExponent,
      plain((p) => p.powerExponent),
    ),
    ...quantity(
      'sheet-scatter',
      priors.sheetSd && meanSdOfScale(priors.sheetSd),
      plain(({ sheetSd }) => sheetSd),
    ),
    ...quantity(
      'flaws',
      priors.flawsPerMetre,
      plain(({ flawsPerMetre }) => flawsPerMetre),
    ),
    ...quantity(
      'thickness',
      layout.thicknessExponent < 0 ? null : priors.thicknessExponent,
      plain(({ thicknessExponent }) => thicknessExponent),
    ),
    ...quantity(
      'passes',
      layout.passesExponent < 0 ? null : priors.passesExponent,
      plain(({ passesExponent }) => passesExponent),
    ),
    ...quantity(
      'corners',
      layout.cornersExponent < 0 ? null : priors.cornersExponent,
      plain(({ cornersExponent }) => cornersExponent),
    ),
  ];
};
