import type { Link } from './links.ts';
import type { Layout, Model, ModelPriors, Observation } from './model.ts';
import { asRead, careOf, type ReadingCare } from './reading.ts';
import { blankParameters, readParameters, readSlopes, type Parameters } from './parameters.ts';

/** Smallest probability that is taken the logarithm of. */
const leastProbability = 1e-300;
const leastProduct = 1e-290;

/** ln of prior times likelihood, up to the constant of N(0, I), and its gradient in z. */
export interface Target {
  readonly layout: Layout;
  readonly priors: ModelPriors;
  readonly value: (z: Float64Array) => number;
  readonly climb: (z: Float64Array, gradient: Float64Array) => number;
}

/** Derivatives of one observation's log probability. */
interface Slopes {
  margin: number;
  /** What of `margin` comes through P(out) alone: corners act on no more. */
  outMargin: number;
  lnSigma: number;
  lnHangBand: number;
  flaws: number;
}

/**
 * Joins model and link. `value` costs two table look-ups and a logarithm an observation (~50 ns), `climb` about three
 * times that. Misreading keeps every probability away from 0; where ε = 0 the exact distribution function is used.
 */
export const target = (model: Model, layout: Layout, link: Link): Target => {
  const { priors, observations, habit } = model;
  const ofCell = careOf(priors, { counted: false });
  const ofCount = careOf(priors, { counted: true });
  const hasMore = observations.some(
    (o) =>
      o.lnThickness !== 0 || o.lnPasses !== 0 || o.lnCorners !== 0 || o.air >= 0 || o.batch >= 0,
  );
  const parameters = blankParameters();
  const slopes: Slopes = { margin: 0, outMargin: 0, lnSigma: 0, lnHangBand: 0, flaws: 0 };
  const bounded = priors.powerExponentMayBeNegative !== true;
  const quick = priors.misreading > 0;
  const cdf = quick ? link.quickCdf : link.cdf;

  const value = (z: Float64Array): number => {
    readParameters(z, layout, priors, parameters);
    if (bounded && parameters.powerExponent <= 0) return -Infinity;
    let sum = 0;
    for (let i = 0; i < layout.size; i += 1) sum -= 0.5 * (z[i] ?? 0) ** 2;
    if (habit) {
      const off = parameters.lnV50 + parameters.powerExponent * habit.lnPower - habit.mean;
      sum -= 0.5 * (off / habit.sd) ** 2;
    }
    const p = parameters;
    const inverseSigma = 1 / p.sigma;
    const { lnV50, powerExponent: b, hangBand } = p;
    let product = 1;
    let lengthM = 0;
    let flaw = 0;
    for (const o of observations) {
      let margin = lnV50 + b * o.lnPower - o.lnSpeed;
      if (layout.sheet >= 0 && o.sheet >= 0) margin += p.sheetSd * (z[layout.sheet + o.sheet] ?? 0);
      if (hasMore) margin += furtherMargin(o, z, layout, p, priors.airSd);
      if (o.lengthM !== lengthM) {
        lengthM = o.lengthM;
        flaw = 1 - Math.exp(-p.flawsPerMetre * lengthM);
      }
      let probability: number;
      const { misread, overlooked } = o.counted ? ofCount : ofCell;
      if (o.lengths === 1 && o.outcome !== 'not-out' && o.outcome !== 'flaw') {
        // What most cells are, written out: the inner loop of every answer.
        const x = margin * inverseSigma;
        const y = (margin + p.cornersExponent * o.lnCorners + hangBand) * inverseSigma;
        const grade =
          o.outcome === 'out'
            ? (1 - flaw) * cdf(x)
            : 0.5 * overlooked * flaw +
              (1 - flaw) *
                (o.outcome === 'stays' ? cdf(-y) : x > 0 ? cdf(-x) - cdf(-y) : cdf(y) - cdf(x));
        probability = Math.max(leastProbability, asRead(misread, grade));
      } else probability = probabilityOf(o, margin, p, flaw, cdf, o.counted ? ofCount : ofCell);
      if (o.count > 1) sum += o.count * Math.log(probability);
      else {
        // One logarithm for many cells, as long as their product keeps its digits.
        if (product * probability < leastProduct) {
          sum += Math.log(product);
          product = 1;
        }
        product *= probability;
      }
    }
    sum += Math.log(product);
    // So far out that a parameter overflows: no posterior there.
    return Number.isNaN(sum) ? -Infinity : sum;
  };

  const climb = (z: Float64Array, gradient: Float64Array): number => {
    readParameters(z, layout, priors, parameters);
    readSlopes(z, layout, priors, parameters);
    const p = parameters;
    let sum = 0;
    for (let i = 0; i < layout.size; i += 1) {
      const zi = z[i] ?? 0;
      sum -= 0.5 * zi * zi;
      gradient[i] = -zi;
    }
    const add = (index: number, amount: number): void => {
      if (index >= 0) gradient[index] = (gradient[index] ?? 0) + amount;
    };
    // A wall instead of the edge at b = 0, so that a climb is turned back rather than stopped.
    if (bounded && p.powerExponent < 0.02) {
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
    for (const o of observations) {
      const margin = marginOf(o, z, layout, p, priors.airSd);
      sum +=
        o.count *
        logProbabilityAndSlopes(
          o,
          margin,
          p,
          { cdf, pdf: link.pdf, care: o.counted ? ofCount : ofCell },
          slopes,
        );
      const dm = o.count * slopes.margin;
      add(layout.lnV50, dm * priors.lnV50.sd);
      add(layout.powerExponent, dm * o.lnPower * priors.powerExponent.sd);
      add(layout.lnSigma, o.count * slopes.lnSigma * priors.lnSigma.sd);
      if ('sd' in priors.lnHangBand) {
        add(layout.lnHangBand, o.count * slopes.lnHangBand * priors.lnHangBand.sd);
      }
      add(layout.flaws, o.count * slopes.flaws * p.flawsSlope);
      add(layout.thicknessExponent, -dm * o.lnThickness * priors.thicknessExponent.sd);
      add(layout.passesExponent, dm * o.lnPasses * priors.passesExponent.sd);
      add(
        layout.cornersExponent,
        -o.count * slopes.outMargin * o.lnCorners * priors.cornersExponent.sd,
      );
      if (layout.air >= 0 && o.air >= 0) add(layout.air + o.air, dm * priors.airSd);
      if (layout.batch >= 0 && o.batch >= 0) {
        add(layout.batch + o.batch, dm * p.batchSd);
        add(layout.batchSd, dm * (z[layout.batch + o.batch] ?? 0) * p.batchSdSlope);
      }
      if (layout.sheet >= 0 && o.sheet >= 0) {
        add(layout.sheet + o.sheet, dm * p.sheetSd);
        add(layout.sheetSd, dm * (z[layout.sheet + o.sheet] ?? 0) * p.sheetSdSlope);
      }
    }
    return sum;
  };

  return { layout, priors, value, climb };
};

/** The margin m of one observation: how far below the changeover it was cut, in ln speed. */
const marginOf = (
  o: Observation,
  z: Float64Array,
  layout: Layout,
  p: Parameters,
  airSd: number,
): number => {
  const margin = p.lnV50 + p.powerExponent * o.lnPower - o.lnSpeed;
  const ofSheet =
    layout.sheet >= 0 && o.sheet >= 0 ? p.sheetSd * (z[layout.sheet + o.sheet] ?? 0) : 0;
  return margin + ofSheet + furtherMargin(o, z, layout, p, airSd);
};

/** What of the margin only some studies have: thickness, passes, corners, air, batch. */
const furtherMargin = (
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
  if (layout.air >= 0 && o.air >= 0) margin += airSd * (z[layout.air + o.air] ?? 0);
  if (layout.batch >= 0 && o.batch >= 0) margin += p.batchSd * (z[layout.batch + o.batch] ?? 0);
  return margin;
};

type Sigmoid = (x: number) => number;

/** Probability of the outcome as it was read, never 0. */
const probabilityOf = (
  o: Observation,
  margin: number,
  p: Parameters,
  flaw: number,
  cdf: Sigmoid,
  { misread, overlooked }: ReadingCare,
): number => {
  if (o.outcome === 'flaw') return Math.max(leastProbability, flaw);
  const true_ = trueProbability(o, o.outcome, margin, p, { flaw, overlooked }, cdf);
  return Math.max(leastProbability, asRead(misread, true_));
};

/** Probability of a grade before misreading. Complements are taken on the side where they lose no digits. */
const trueProbability = (
  o: Observation,
  outcome: Exclude<Observation['outcome'], 'flaw'>,
  margin: number,
  p: Parameters,
  { flaw, overlooked }: { readonly flaw: number; readonly overlooked: number },
  cdf: Sigmoid,
): number => {
  const { lengths } = o;
  const sound = 1 - flaw;
  const asFell = overlooked * flaw;
  if (outcome === 'out') return sound * share(cdf, margin / p.sigma, lengths);
  if (outcome === 'not-out') return asFell + sound * missing(cdf, margin / p.sigma, lengths);
  const y = (margin + p.cornersExponent * o.lnCorners + p.hangBand) / p.sigma;
  if (outcome === 'stays') return 0.5 * asFell + sound * missing(cdf, y, lengths);
  const x = margin / p.sigma;
  const hanging =
    x > 0
      ? missing(cdf, x, lengths) - missing(cdf, y, lengths)
      : share(cdf, y, lengths) - share(cdf, x, lengths);
  return 0.5 * asFell + sound * Math.max(0, hanging);
};

/**
 * The weakest-link rule: a cut of L reference lengths comes out where every one of them does, F(x)ᴸ.
 * Common practice in strength of materials (Weibull 1951); for the cut, judgement.
 */
const share = (cdf: Sigmoid, x: number, lengths: number): number =>
  lengths === 1 ? cdf(x) : cdf(x) ** lengths;

/** 1 − F(x)ᴸ. */
const missing = (cdf: Sigmoid, x: number, lengths: number): number =>
  lengths === 1 ? cdf(-x) : -Math.expm1(lengths * Math.log1p(-cdf(-x)));

const logProbabilityAndSlopes = (
  o: Observation,
  margin: number,
  p: Parameters,
  { cdf, pdf, care }: { readonly cdf: Sigmoid; readonly pdf: Sigmoid; readonly care: ReadingCare },
  slopes: Slopes,
): number => {
  const { misread, overlooked } = care;
  const clear = Math.exp(-p.flawsPerMetre * o.lengthM);
  const flaw = 1 - clear;
  const flawSlope = o.lengthM * clear;
  if (o.outcome === 'flaw') {
    slopes.margin = 0;
    slopes.outMargin = 0;
    slopes.lnSigma = 0;
    slopes.lnHangBand = 0;
    slopes.flaws = flawSlope / Math.max(leastProbability, flaw);
    return Math.log(Math.max(leastProbability, flaw));
  }
  const x = margin / p.sigma;
  const y = (margin + p.cornersExponent * o.lnCorners + p.hangBand) / p.sigma;
  const outShare = share(cdf, x, o.lengths);
  const hangShare = share(cdf, y, o.lengths);
  const outSlope = slopeOfShare(cdf, pdf, x, o.lengths);
  const hangSlope = slopeOfShare(cdf, pdf, y, o.lengths);
  // Weights with which the two shares and the flaw enter this grade's probability.
  let ofOut = 0;
  let ofHang = 0;
  let ofFlaw = 0;
  switch (o.outcome) {
    case 'out':
      ofOut = clear;
      ofFlaw = -outShare;
      break;
    case 'not-out':
      ofOut = -clear;
      ofFlaw = overlooked - (1 - outShare);
      break;
    case 'hangs':
      ofOut = -clear;
      ofHang = clear;
      ofFlaw = 0.5 * overlooked - (hangShare - outShare);
      break;
    case 'stays':
      ofHang = -clear;
      ofFlaw = 0.5 * overlooked - (1 - hangShare);
      break;
  }
  const true_ = trueProbability(o, o.outcome, margin, p, { flaw, overlooked }, cdf);
  const read = Math.max(leastProbability, asRead(misread, true_));
  const scale = (1 - 1.5 * misread) / read;
  slopes.outMargin = (scale * ofOut * outSlope) / p.sigma;
  slopes.margin = slopes.outMargin + (scale * ofHang * hangSlope) / p.sigma;
  slopes.lnSigma = -scale * (ofOut * outSlope * x + ofHang * hangSlope * y);
  slopes.lnHangBand = (scale * ofHang * hangSlope * p.hangBand) / p.sigma;
  slopes.flaws = scale * ofFlaw * flawSlope;
  return Math.log(read);
};

const slopeOfShare = (cdf: Sigmoid, pdf: Sigmoid, x: number, lengths: number): number =>
  lengths === 1 ? pdf(x) : lengths * cdf(x) ** (lengths - 1) * pdf(x);
