import type { Observation } from './model.ts';
import type { Parameters } from './parameters.ts';
import { asRead, type ReadingCare } from './reading.ts';

/** Smallest probability that is taken the logarithm of. */
export const leastProbability = 1e-300;

/** Derivatives of one observation's log probability. */
export interface Slopes {
  margin: number;
  /** What of `margin` comes through P(out) alone: corners act on no more. */
  outMargin: number;
  lnSigma: number;
  lnHangBand: number;
  flaws: number;
}

export const blankSlopes = (): Slopes => ({
  margin: 0,
  outMargin: 0,
  lnSigma: 0,
  lnHangBand: 0,
  flaws: 0,
});

export type Sigmoid = (x: number) => number;

/** Probability of the outcome as it was read, never 0. */
export const probabilityOf = (
  o: Observation,
  margin: number,
  p: Parameters,
  flaw: number,
  cdf: Sigmoid,
  { misread, overlooked }: ReadingCare,
): number => {
  if (o.outcome === 'flaw') return Math.max(leastProbability, flaw);
  const true_ = trueProbability(o, o.outcome, margin, p, flaw, overlooked, cdf);
  return Math.max(leastProbability, asRead(misread, true_));
};

/** Probability of a grade before misreading. Complements are taken on the side where they lose no digits. */
const trueProbability = (
  o: Observation,
  outcome: Exclude<Observation['outcome'], 'flaw'>,
  margin: number,
  p: Parameters,
  flaw: number,
  overlooked: number,
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

export const logProbabilityAndSlopes = (
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
  const true_ = trueProbability(o, o.outcome, margin, p, flaw, overlooked, cdf);
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
