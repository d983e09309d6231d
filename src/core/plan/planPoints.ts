import type { Fit } from '../cutmodel/fit.ts';
import { levelOf } from '../cutmodel/decisionOn.ts';
import { links } from '../cutmodel/links.ts';
import { systematicResample } from '../../num/systematicResample.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';

/** The posterior as a plan sees it: so many workshops that this one may be, each as likely as the other. */
export interface PlanPoints {
  readonly count: number;
  /** ln of the changeover at the plan's power, over the batch's sheets. */
  readonly level: Float64Array;
  readonly sigma: Float64Array;
  readonly hangBand: Float64Array;
  readonly sheetSd: Float64Array;
  readonly flawsPerMetre: Float64Array;
  /** Index into the links. */
  readonly link: Uint8Array;
  /** The share of parts cut through that stay open, 0–1; absent: nothing of the sheet was seen to weld back, so slower is never less sure. */
  readonly openAt?: (speedMmPerS: number, lengths: number) => number;
}

/** Of each point the shares of shapes cut at one speed that come out, hang and are not through, on one sheet of the batch. */
export interface SheetOdds {
  readonly out: Float64Array;
  readonly hangs: Float64Array;
  readonly stays: Float64Array;
  /** Their natural logarithms. */
  readonly lnOut: Float64Array;
  readonly lnHangs: Float64Array;
  readonly lnStays: Float64Array;
}

/** The points that a plan looks at: enough for a choice between settings a step apart. */
const pointCount = 300;

/** Thins a posterior to points of equal weight, the changeover's distribution kept best. Null: the power says nothing. */
export const planPoints = (
  { compiled, posterior, study }: Fit,
  powerPct: number,
): PlanPoints | null => {
  const lnPower = compiled.lnPowerOf(powerPct);
  if (lnPower === null) return null;
  const level = levelOf(compiled, posterior, { ...study.promise, for: 'batch' }, 1).map(
    (atP0, i) => atP0 + (posterior.powerExponent[i] ?? NaN) * lnPower,
  );
  const chosen = systematicResample(posterior.weight, level, pointCount);
  const kept = (values: Float64Array): Float64Array =>
    Float64Array.from(chosen, (i) => values[i] ?? NaN);
  const { welding } = compiled;
  return {
    count: pointCount,
    ...(welding === undefined
      ? {}
      : {
          openAt: (speedMmPerS, lengths) => welding.openAt({ powerPct, speedMmPerS }, lengths),
        }),
    level: kept(level),
    sigma: kept(posterior.sigma),
    hangBand: kept(posterior.hangBand),
    sheetSd: kept(posterior.sheetSd),
    flawsPerMetre: kept(posterior.flawsPerMetre),
    link: Uint8Array.from(chosen, (i) => posterior.link[i] ?? NaN),
  };
};

/** Places of a sheet among its fellows and their weights: Gauss and Hermite's five nodes for a normal (Abramowitz & Stegun 25.10). */
export const sheetPlaces = [
  -2.8569700138728056, -1.355626179974266, 0, 1.355626179974266, 2.8569700138728056,
];
export const sheetPlaceWeights = [
  0.011257411327720693, 0.2220759220056126, 0.5333333333333333, 0.2220759220056126,
  0.011257411327720693,
];

/** Grades are noted wrongly now and then, and flaws overlooked: no outcome is impossible. */
const leastOdds = 0.002;

/**
 * The odds of sound shapes of a length at a speed, one entry for each sheet place and point: `[place * count + point]`. What
 * is cut through and welds back hangs: it is freed by hand.
 */
export const oddsAt = (points: PlanPoints, speedMmPerS: number, lengthMm: number): SheetOdds => {
  const { count, level, sigma, hangBand, sheetSd, link } = points;
  const lengths = referenceLengthsIn(lengthMm);
  const lnSpeed = Math.log(speedMmPerS);
  const open = points.openAt?.(speedMmPerS, lengths) ?? 1;
  const size = count * sheetPlaces.length;
  const [out, hangs, stays] = [
    new Float64Array(size),
    new Float64Array(size),
    new Float64Array(size),
  ];
  for (let place = 0; place < sheetPlaces.length; place += 1) {
    for (let i = 0; i < count; i += 1) {
      const cdf = links[link[i] ?? NaN]?.quickCdf;
      if (!cdf) continue;
      const margin =
        (level[i] ?? NaN) + (sheetSd[i] ?? NaN) * (sheetPlaces[place] ?? NaN) - lnSpeed;
      const scatter = sigma[i] ?? NaN;
      const fell = open * cdf(margin / scatter) ** lengths;
      const through = cdf((margin + (hangBand[i] ?? NaN)) / scatter) ** lengths;
      const at = place * count + i;
      out[at] = leastOdds + (1 - 3 * leastOdds) * fell;
      hangs[at] = leastOdds + (1 - 3 * leastOdds) * Math.max(0, through - fell);
      stays[at] = leastOdds + (1 - 3 * leastOdds) * (1 - through);
    }
  }
  const ln = (odds: Float64Array): Float64Array => odds.map((p) => Math.log(p));
  return { out, hangs, stays, lnOut: ln(out), lnHangs: ln(hangs), lnStays: ln(stays) };
};

/** Averages the odds of each point over the places of its sheet. */
export const overSheets = (odds: Float64Array, count: number): Float64Array => {
  const mean = new Float64Array(count);
  sheetPlaceWeights.forEach((weight, place) => {
    for (let i = 0; i < count; i += 1) {
      mean[i] = (mean[i] ?? NaN) + weight * (odds[place * count + i] ?? NaN);
    }
  });
  return mean;
};
