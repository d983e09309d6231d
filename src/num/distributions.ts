import gammaln from '@stdlib/math-base-special-gammaln';
import betacdf from '@stdlib/stats-base-dists-beta-cdf';
import betaquantile from '@stdlib/stats-base-dists-beta-quantile';
import chisquarecdf from '@stdlib/stats-base-dists-chisquare-cdf';
import chisquarequantile from '@stdlib/stats-base-dists-chisquare-quantile';
import tcdf from '@stdlib/stats-base-dists-t-cdf';
import tquantile from '@stdlib/stats-base-dists-t-quantile';
import { normalQuantile } from './normal.ts';

/*
 * Thin skins over the library, each compared with mpmath at 50 digits on a grid that reaches into the far tails: within
 * 2e-13 relative, save where a comment says why another route is taken. Degrees of freedom and shapes are positive,
 * whole or not; outside the range of an argument the answer is NaN.
 */

/** Natural logarithm of the gamma function, `x` > 0. */
export const logGamma = (x: number): number => gammaln(x);

/** Student's t distribution function. */
export const tCdf = (x: number, degrees: number): number => tcdf(x, degrees);

/** From here on the normal quantile and one correction are right to 1e-13; the library answers 0 from about 1e17 on. */
const manyDegrees = 1e8;

/**
 * The x at which Student's t distribution function is `p`. With very many degrees of freedom by the expansion about the
 * normal, z + (z³ + z)/(4·degrees); Abramowitz & Stegun 26.7.5.
 */
export const tQuantile = (p: number, degrees: number): number => {
  if (!(degrees > manyDegrees)) return tquantile(p, degrees);
  const z = normalQuantile(p);
  return z + (z ** 3 + z) / (4 * degrees);
};

/** Beta distribution function: the regularised incomplete beta function. */
export const betaCdf = (x: number, a: number, b: number): number => betacdf(x, a, b);

/** The x at which the beta distribution function is `p`. */
export const betaQuantile = (p: number, a: number, b: number): number => betaquantile(p, a, b);

/** Chi-square distribution function. */
export const chiSquareCdf = (x: number, degrees: number): number => chisquarecdf(x, degrees);

/** The x at which the chi-square distribution function is `p`. */
export const chiSquareQuantile = (p: number, degrees: number): number =>
  chisquarequantile(p, degrees);

/**
 * 1 − the chi-square distribution function, with its digits where that is tiny. Above the middle by the continued
 * fraction of the incomplete gamma function (NIST Digital Library of Mathematical Functions 8.9.2, in Lentz's form).
 */
export const chiSquareUpperTail = (x: number, degrees: number): number => {
  const [shape, half] = [degrees / 2, x / 2];
  if (!(half > shape + 1)) return 1 - chiSquareCdf(x, degrees);
  if (half === Infinity) return 0;
  const tiny = 1e-300;
  let b = half + 1 - shape;
  let [c, d] = [1 / tiny, 1 / b];
  let fraction = d;
  for (let i = 1; i < 10_000; i += 1) {
    const a = -i * (i - shape);
    b += 2;
    d = 1 / nonZero(a * d + b, tiny);
    c = nonZero(b + a / c, tiny);
    fraction *= c * d;
    if (Math.abs(c * d - 1) < 1e-16) break;
  }
  return fraction * Math.exp(shape * Math.log(half) - half - logGamma(shape));
};

const nonZero = (value: number, tiny: number): number => (value === 0 ? tiny : value);

/**
 * F distribution function. Through the beta distribution, from the side whose tail is the small one: the library's own
 * loses six digits near zero.
 */
export const fCdf = (x: number, degrees1: number, degrees2: number): number => {
  if (x <= 0) return 0;
  const ratio = (degrees1 * x) / degrees2;
  const above = betaCdf(1 / (1 + ratio), degrees2 / 2, degrees1 / 2);
  return above < 0.5 ? 1 - above : betaCdf(ratio / (1 + ratio), degrees1 / 2, degrees2 / 2);
};

/** The x at which the F distribution function is `p`: likewise, since the library's own says Infinity early. */
export const fQuantile = (p: number, degrees1: number, degrees2: number): number => {
  const [a, b] = [degrees1 / 2, degrees2 / 2];
  const x = p < 0.5 ? betaQuantile(p, a, b) : 1 - betaQuantile(1 - p, b, a);
  const rest = p < 0.5 ? 1 - x : betaQuantile(1 - p, b, a);
  return (degrees2 * x) / (degrees1 * rest);
};
