import { betaQuantile } from './distributions.ts';
import { normalQuantile } from './normal.ts';

export type Interval = readonly [low: number, high: number];

/** A count of successes `x` out of `n`, 0 ≤ x ≤ n, n ≥ 1. */
export interface Count {
  readonly x: number;
  readonly n: number;
}

/** The exact interval of Clopper & Pearson 1934: never covers less than `confidence`. */
export const clopperPearson = (count: Count, confidence: number): Interval => {
  const tail = (1 - confidence) / 2;
  return [clopperPearsonLower(count, 1 - tail), clopperPearsonUpper(count, 1 - tail)];
};

/** The exact one-sided lower limit: with this confidence the true share is at least that. */
export const clopperPearsonLower = ({ x, n }: Count, confidence: number): number =>
  x === 0 ? 0 : betaQuantile(1 - confidence, x, n - x + 1);

const clopperPearsonUpper = ({ x, n }: Count, confidence: number): number =>
  x === n ? 1 : betaQuantile(confidence, x + 1, n - x);

/** The score interval of Wilson 1927. */
export const wilson = ({ x, n }: Count, confidence: number): Interval => {
  const z = normalQuantile((1 + confidence) / 2);
  const share = x / n;
  const centre = share + (z * z) / (2 * n);
  const half = z * Math.sqrt((share * (1 - share)) / n + (z / (2 * n)) ** 2);
  const scale = 1 + (z * z) / n;
  // At the ends the formula gives 0 and 1 but for rounding.
  return [x === 0 ? 0 : (centre - half) / scale, x === n ? 1 : (centre + half) / scale];
};

/** The equal-tailed posterior interval under Jeffreys' prior: quantiles of Beta(x + ½, n − x + ½). */
export const jeffreys = ({ x, n }: Count, confidence: number): Interval => {
  const tail = (1 - confidence) / 2;
  return [betaQuantile(tail, x + 0.5, n - x + 0.5), betaQuantile(1 - tail, x + 0.5, n - x + 0.5)];
};

/** The same, its lower limit put to 0 when nothing succeeded and its upper to 1 when all did (Brown, Cai & DasGupta 2001). */
export const jeffreysWithEnds = (count: Count, confidence: number): Interval => {
  const [low, high] = jeffreys(count, confidence);
  return [count.x === 0 ? 0 : low, count.x === count.n ? 1 : high];
};
