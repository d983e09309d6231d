import { bracketedRoot } from './bracketedRoot.ts';
import { logGamma } from './distributions.ts';
import { normalCdf, normalQuantile } from './normal.ts';

/**
 * Distribution function of Student's t with `degrees` of freedom, shifted by `shift`: (Z + shift)/S, where degrees·S²
 * is chi-square.
 *
 * As the mean of Φ(x·s − shift) over s, with u = ln s as variable: there the integrand is analytic and dies away on
 * both sides, so that the trapezoidal rule on the whole line gains digits as fast as its step shrinks. The step halves
 * until two answers agree to 1e-14. Good for any degrees from 1 to 10⁶ and |shift| to 10³.
 */
export const noncentralTCdf = (x: number, degrees: number, shift: number): number => {
  const logScale = Math.LN2 + (degrees / 2) * Math.log(degrees / 2) - logGamma(degrees / 2);
  const integrand = (u: number): number => {
    const s = Math.exp(u);
    return normalCdf(x * s - shift) * Math.exp(logScale + degrees * (u - (s * s) / 2));
  };
  // To the left the weight falls like s^degrees, to the right like exp(−degrees·s²/2), about a width of 1/√(2·degrees).
  const width = 1 / Math.sqrt(2 * degrees);
  const [low, high] = [-Math.max(9 * width, 40 / degrees) - 2 * width, 9 * width];
  let steps = 32;
  let sum = 0;
  for (let i = 0; i <= steps; i += 1) sum += integrand(low + ((high - low) * i) / steps);
  let area = (sum * (high - low)) / steps;
  for (let halving = 0; halving < 12; halving += 1) {
    for (let i = 0; i < steps; i += 1) sum += integrand(low + ((high - low) * (i + 0.5)) / steps);
    steps *= 2;
    const finer = (sum * (high - low)) / steps;
    const settled = Math.abs(finer - area) <= 1e-14 * Math.abs(finer);
    area = finer;
    if (settled) break;
  }
  return Math.min(1, area);
};

/** The x at which {@link noncentralTCdf} is `p`, 0 < p < 1; null where no bracket was found. */
export const noncentralTQuantile = (p: number, degrees: number, shift: number): number | null => {
  const misfit = (x: number): number => noncentralTCdf(x, degrees, shift) - p;
  const start = shift + normalQuantile(p);
  let reach = 1 + Math.abs(start) / Math.sqrt(2 * degrees);
  while (misfit(start - reach) > 0 && reach < 1e12) reach *= 2;
  const low = start - reach;
  reach = 1 + Math.abs(start) / Math.sqrt(2 * degrees);
  while (misfit(start + reach) < 0 && reach < 1e12) reach *= 2;
  return bracketedRoot(misfit, { low, high: start + reach, relative: 1e-14 })?.x ?? null;
};

/**
 * The factor k for which a normal sample's mean + k·sd lies above the quantile `coverage` of its population with
 * probability `confidence`: the one-sided tolerance factor.
 *
 * @param n sample size, at least 2.
 */
export const toleranceFactor = (
  n: number,
  { coverage, confidence }: { readonly coverage: number; readonly confidence: number },
): number | null => {
  const root = Math.sqrt(n);
  const quantile = noncentralTQuantile(confidence, n - 1, normalQuantile(coverage) * root);
  return quantile === null ? null : quantile / root;
};
