import erfcx from '@stdlib/math-base-special-erfcx';
import cdf from '@stdlib/stats-base-dists-normal-cdf';
import logcdf from '@stdlib/stats-base-dists-normal-logcdf';
import quantile from '@stdlib/stats-base-dists-normal-quantile';

const inverseSqrtTwoPi = 1 / Math.sqrt(2 * Math.PI);
const sqrtTwoOverPi = Math.sqrt(2 / Math.PI);

/** Below this probability the library's quantile, which goes through 2p − 1, loses digits. */
const farTail = 0.02;

/** Density of the standard normal at `x`. */
export const normalPdf = (x: number): number => inverseSqrtTwoPi * Math.exp(-0.5 * x * x);

/** Standard normal distribution function, full relative accuracy in the lower tail (underflows to 0 below −38). */
export const normalCdf = (x: number): number => cdf(x, 0, 1);

/** Logarithm of the standard normal distribution function, accurate in both tails; −Infinity only at −Infinity. */
export const logNormalCdf = (x: number): number => logcdf(x, 0, 1);

/**
 * The x at which the standard normal distribution function is `p`.
 * −Infinity at 0, Infinity at 1, NaN outside [0, 1].
 * In the far tails Newton's rule on the logarithm of the distribution function: that is concave, so from a start on
 * the left every step stays on the left and closes in.
 */
export const normalQuantile = (p: number): number => {
  if (p > 1 - farTail && p < 1) return -lowerTailQuantile(1 - p);
  return p < farTail && p > 0 ? lowerTailQuantile(p) : quantile(p, 0, 1);
};

const lowerTailQuantile = (p: number): number => {
  const target = Math.log(p);
  // Mills: Φ(x) ≤ ½·exp(−x²/2), so this lies left of the root.
  let x = -Math.sqrt(-2 * target);
  for (let step = 0; step < 30; step += 1) {
    const change = (target - logNormalCdf(x)) / inverseMills(x);
    x += change;
    if (Math.abs(change) < 1e-15 * Math.abs(x)) break;
  }
  return x;
};

/** φ(x)/Φ(x): the slope of {@link logNormalCdf}; about −x far below zero, 0 far above. */
export const inverseMills = (x: number): number => sqrtTwoOverPi / erfcx(-x * Math.SQRT1_2);
