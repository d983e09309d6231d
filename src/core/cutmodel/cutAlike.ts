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
export const gatherAlike = ({ observations, priors }: Model): readonly CutAlike[] => {
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

/** A sum of logarithms, the last of which are still a product: one logarithm for many. */
export interface LogProduct {
  log: number;
  product: number;
}

/** So many alike are multiplied; of more the logarithm is quicker. */
const fewAlike = 3;
/** A product below `leastProduct` is made a logarithm before its digits go, and so is a chance that is next to none. */
const leastProduct = 1e-100;
const leastFactor = 1e-60;

const multiply = (into: LogProduct, count: number, probability: number): void => {
  if (count === 0) return;
  if (count > fewAlike || !(probability > leastFactor)) {
    into.log += count * Math.log(Math.max(leastProbability, probability));
    return;
  }
  for (let i = 0; i < count; i += 1) into.product *= probability;
  if (into.product < leastProduct) {
    into.log += Math.log(into.product);
    into.product = 1;
  }
};

/**
 * Multiplies by the chance that all ended as they did, where the setting's margin is `margin` and a share `flaw` of them met a
 * flaw. Two values of the distribution function whatever their number: right to its table's 1e-10, so only where grades
 * may be misread.
 */
export const multiplyAlike = (
  into: LogProduct,
  { cut, care, out, hangs, stays, notOut, flaw: seen }: CutAlike,
  margin: number,
  p: Parameters,
  flaw: number,
  cdf: Sigmoid,
): void => {
  const { lengths } = cut;
  const { misread, overlooked } = care;
  const sound = 1 - flaw;
  const asFell = overlooked * flaw;
  // Of those that all stayed, coming out is not asked for, as little as coming through of those that all came out.
  let ofOut = out === 0 && hangs === 0 && notOut === 0 ? 0 : cdf(margin / p.sigma);
  let ofThrough =
    hangs === 0 && stays === 0
      ? 1
      : cdf((margin + p.cornersExponent * cut.lnCorners + p.hangBand) / p.sigma);
  if (lengths !== 1) {
    if (ofOut !== 0) ofOut **= lengths;
    if (ofThrough !== 1) ofThrough **= lengths;
  }
  multiply(into, out, asRead(misread, sound * ofOut));
  multiply(into, hangs, asRead(misread, 0.5 * asFell + sound * Math.max(0, ofThrough - ofOut)));
  multiply(into, stays, asRead(misread, 0.5 * asFell + sound * (1 - ofThrough)));
  multiply(into, notOut, asRead(misread, asFell + sound * (1 - ofOut)));
  multiply(into, seen, flaw);
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
