import type { Model, Observation } from './model.ts';
import { leastProbability, type Sigmoid, type Slopes } from './observed.ts';
import type { Parameters } from './parameters.ts';
import { asRead, careOf, type ReadingCare } from './reading.ts';

/** All shapes of one sheet that were cut alike, by how they ended. */
export interface CutAlike {
  /** One of their observations: its margin is that of all. */
  readonly cut: Observation;
  readonly care: ReadingCare;
  readonly out: number;
  readonly hangs: number;
  readonly stays: number;
  readonly notOut: number;
  readonly flaw: number;
}

/** Gathers a model's observations by sheet and setting. O(observations). */
export const groupAlike = ({ observations, priors }: Model): readonly CutAlike[] => {
  const groups = new Map<string, { -readonly [key in keyof CutAlike]: CutAlike[key] }>();
  for (const o of observations) {
    const key = Object.values({ ...o, outcome: '', count: 0 }).join('|');
    let group = groups.get(key);
    if (group === undefined) {
      const care = careOf(priors, o);
      group = { cut: o, care, out: 0, hangs: 0, stays: 0, notOut: 0, flaw: 0 };
      groups.set(key, group);
    }
    group[o.outcome === 'not-out' ? 'notOut' : o.outcome] += o.count;
  }
  return [...groups.values()];
};

/** So many alike are multiplied; of more the logarithm is quicker. */
const fewAlike = 3;
/** A product below `leastProduct` is made a logarithm before its digits go, and so is a chance that is next to none. */
const leastProduct = 1e-100;
const leastFactor = 1e-60;

/** ln of the chance that the shapes of some settings ended as they did, each with its margin shifted by so much. */
export type LogChance = (
  some: readonly number[],
  shift: number,
  at: {
    readonly p: Parameters;
    /** Of each setting: its margin on a mean sheet, and the share that meets a flaw. */
    readonly margin: Float64Array;
    readonly flaw: Float64Array;
  },
) => number;

/** What a setting is in the table of {@link logChanceOf}: so many numbers one after the other. */
const columns = 10;

/**
 * Two values of the distribution function a setting whatever the number of its shapes: right to its table's 1e-10, so only
 * where grades may be misread. Settings stand in one table of numbers: it is the inner loop of every sum of many sheets.
 */
export const logChanceOf = (settings: readonly CutAlike[], cdf: Sigmoid): LogChance => {
  const table = Float64Array.from(
    settings.flatMap(({ cut, care, out, hangs, stays, notOut, flaw }) => [
      out,
      hangs,
      stays,
      notOut,
      flaw,
      cut.lengths,
      cut.lnCorners,
      asRead(care.misread, 0),
      asRead(care.misread, 1) - asRead(care.misread, 0),
      care.overlooked,
    ]),
  );
  let log = 0;
  let product = 1;
  const multiply = (count: number, probability: number): void => {
    if (count > fewAlike || !(probability > leastFactor)) {
      log += count * Math.log(Math.max(leastProbability, probability));
      return;
    }
    product *=
      count === 1
        ? probability
        : count === 2
          ? probability * probability
          : probability * probability * probability;
    if (product < leastProduct) {
      log += Math.log(product);
      product = 1;
    }
  };
  return (some, shift, { p: { sigma, cornersExponent, hangBand }, margin, flaw }) => {
    log = 0;
    product = 1;
    for (const i of some) {
      const first = i * columns;
      const out = table[first] ?? NaN;
      const hangs = table[first + 1] ?? NaN;
      const stays = table[first + 2] ?? NaN;
      const notOut = table[first + 3] ?? NaN;
      const seen = table[first + 4] ?? NaN;
      const lengths = table[first + 5] ?? NaN;
      const never = table[first + 7] ?? NaN;
      const kept = table[first + 8] ?? NaN;
      const met = flaw[i] ?? NaN;
      const sound = 1 - met;
      const here = (margin[i] ?? NaN) + shift;
      // Of those that all stayed, coming out is not asked for, as little as coming through of those that all came out.
      let ofOut = out === 0 && hangs === 0 && notOut === 0 ? 0 : cdf(here / sigma);
      let ofThrough =
        hangs === 0 && stays === 0
          ? 1
          : cdf((here + cornersExponent * (table[first + 6] ?? NaN) + hangBand) / sigma);
      if (lengths !== 1) {
        if (ofOut !== 0) ofOut **= lengths;
        if (ofThrough !== 1) ofThrough **= lengths;
      }
      const asFell = (table[first + 9] ?? NaN) * met;
      if (out !== 0) multiply(out, never + kept * sound * ofOut);
      if (hangs !== 0)
        multiply(hangs, never + kept * (0.5 * asFell + sound * Math.max(0, ofThrough - ofOut)));
      if (stays !== 0) multiply(stays, never + kept * (0.5 * asFell + sound * (1 - ofThrough)));
      if (notOut !== 0) multiply(notOut, never + kept * (asFell + sound * (1 - ofOut)));
      if (seen !== 0) multiply(seen, met);
    }
    return log + Math.log(product);
  };
};

/** The same with its slopes. */
export const slopesOfAlike = (
  { cut, care, out, hangs, stays, notOut, flaw: seen }: CutAlike,
  margin: number,
  p: Parameters,
  { flaw, cdf, pdf }: { readonly flaw: number; readonly cdf: Sigmoid; readonly pdf: Sigmoid },
  slopes: Slopes,
): void => {
  const { lengths, lengthM } = cut;
  const { misread, overlooked } = care;
  const sound = 1 - flaw;
  const x = margin / p.sigma;
  const y = (margin + p.cornersExponent * cut.lnCorners + p.hangBand) / p.sigma;
  const [fx, fy] = [cdf(x), cdf(y)];
  const ofOut = lengths === 1 ? fx : fx ** lengths;
  const ofThrough = lengths === 1 ? fy : fy ** lengths;
  const outSlope = lengths === 1 ? pdf(x) : lengths * fx ** (lengths - 1) * pdf(x);
  const throughSlope = lengths === 1 ? pdf(y) : lengths * fy ** (lengths - 1) * pdf(y);
  const kept = 1 - 1.5 * misread;
  const asFell = overlooked * flaw;
  const weightOf = (count: number, probability: number): number =>
    count === 0 ? 0 : (kept * count) / Math.max(leastProbability, asRead(misread, probability));
  const perOut = weightOf(out, sound * ofOut);
  const perHang = weightOf(hangs, 0.5 * asFell + sound * Math.max(0, ofThrough - ofOut));
  const perStay = weightOf(stays, 0.5 * asFell + sound * (1 - ofThrough));
  const perNot = weightOf(notOut, asFell + sound * (1 - ofOut));
  const toOut = sound * outSlope * (perOut - perHang - perNot);
  const toThrough = sound * throughSlope * (perHang - perStay);
  slopes.outMargin = toOut / p.sigma;
  slopes.margin = (toOut + toThrough) / p.sigma;
  slopes.lnSigma = -(toOut * x + toThrough * y);
  slopes.lnHangBand = (toThrough * p.hangBand) / p.sigma;
  const half = 0.5 * overlooked;
  slopes.flaws =
    lengthM *
    sound *
    (-perOut * ofOut +
      perHang * (half - Math.max(0, ofThrough - ofOut)) +
      perStay * (half - (1 - ofThrough)) +
      perNot * (overlooked - (1 - ofOut)) +
      (seen === 0 ? 0 : seen / Math.max(leastProbability, flaw)));
};
