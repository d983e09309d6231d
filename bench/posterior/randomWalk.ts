import { positiveFactor } from '../../src/num/newtonMode.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

export interface Walk {
  /** One array a kept step. */
  readonly steps: readonly Float64Array[];
  /** The side variable at each kept step. */
  readonly sides: Uint8Array;
  readonly acceptedShare: number;
}

export interface WalkOptions {
  readonly warmUp: number;
  readonly keep: number;
  /** A side variable of so many values, each as likely to be proposed: 1 for none. */
  readonly sides?: number;
}

/** How often a step tries another value of the side variable instead of moving. */
const sideShare = 0.2;
/** Best in many dimensions: Roberts, Gelman & Gilks (1997), Ann. Appl. Probab. 7:110. */
const wantedAcceptance = 0.234;

/**
 * Random-walk Metropolis (Metropolis et al. 1953) whose proposal learns the covariance while it warms up (Haario, Saksman &
 * Tamminen 2001, Bernoulli 7:223) and is then held. It knows nothing of the model but its density, and starts at 0, the
 * middle of the prior.
 */
export const randomWalk = (
  logDensity: (z: Float64Array, side: number) => number,
  dimensions: number,
  random: SeededRandom,
  { warmUp, keep, sides = 1 }: WalkOptions,
): Walk => {
  let at = new Float64Array(dimensions);
  let side = 0;
  let height = logDensity(at, side);
  let factor = Float64Array.from({ length: dimensions ** 2 }, (_, i) =>
    Math.floor(i / dimensions) === i % dimensions ? 0.5 : 0,
  );
  let lnScale = 0;
  const mean = new Float64Array(dimensions);
  const covariance = new Float64Array(dimensions ** 2);
  const steps: Float64Array[] = [];
  const keptSides = new Uint8Array(keep);
  let accepted = 0;
  for (let t = 0; t < warmUp + keep; t += 1) {
    const tryingSide = sides > 1 && random.uniform() < sideShare;
    const trial = tryingSide ? at : moved(at, factor, Math.exp(lnScale), random);
    const trialSide = tryingSide ? random.integer(sides) : side;
    const trialHeight = logDensity(trial, trialSide);
    const taken = Math.log(random.uniform()) < trialHeight - height;
    if (taken) [at, side, height] = [trial, trialSide, trialHeight];
    if (t >= warmUp) {
      if (taken && !tryingSide) accepted += 1;
      steps.push(at);
      keptSides[t - warmUp] = side;
    } else {
      if (!tryingSide) lnScale += ((taken ? 1 : 0) - wantedAcceptance) / Math.sqrt(t + 1);
      learn(at, t, mean, covariance);
      if (t > 100 && t % 100 === 0) factor = proposalFactor(covariance, t + 1, dimensions);
    }
  }
  return { steps, sides: keptSides, acceptedShare: accepted / keep };
};

const moved = (
  at: Float64Array,
  factor: Float64Array,
  scale: number,
  random: SeededRandom,
): Float64Array<ArrayBuffer> => {
  const n = at.length;
  const noise = at.map(() => random.normal());
  return Float64Array.from(at, (value, i) => {
    let step = 0;
    for (let j = 0; j <= i; j += 1) step += (factor[i * n + j] ?? 0) * (noise[j] ?? 0);
    return value + scale * step;
  });
};

/** Running mean and sum of squares about it (Welford 1962). */
const learn = (at: Float64Array, t: number, mean: Float64Array, sums: Float64Array): void => {
  const n = at.length;
  const before = at.map((value, i) => value - (mean[i] ?? 0));
  before.forEach((off, i) => (mean[i] = (mean[i] ?? 0) + off / (t + 1)));
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) {
      sums[i * n + j] = (sums[i * n + j] ?? 0) + (before[i] ?? 0) * ((at[j] ?? 0) - (mean[j] ?? 0));
    }
  }
};

const proposalFactor = (
  sums: Float64Array,
  count: number,
  dimensions: number,
): Float64Array<ArrayBuffer> =>
  Float64Array.from(
    positiveFactor(
      sums.map(
        (value, i) =>
          ((2.38 ** 2 / dimensions) * value) / count +
          (Math.floor(i / dimensions) === i % dimensions ? 1e-6 : 0),
      ),
      dimensions,
    ),
  );

/**
 * Effective number of independent draws in a chain for the mean of `values`: Geyer's initial positive sequence (1992,
 * Stat. Sci. 7:473).
 */
export const effectiveDraws = (values: Float64Array): number => {
  const n = values.length;
  const mean = values.reduce((a, b) => a + b, 0) / n;
  const covarianceAt = (lag: number): number => {
    let sum = 0;
    for (let i = 0; i + lag < n; i += 1) {
      sum += ((values[i] ?? 0) - mean) * ((values[i + lag] ?? 0) - mean);
    }
    return sum / n;
  };
  const variance = covarianceAt(0);
  if (!(variance > 0)) return 0;
  let inflation = -1;
  for (let lag = 0; lag + 1 < n / 3; lag += 2) {
    const pair = (covarianceAt(lag) + covarianceAt(lag + 1)) / variance;
    if (pair <= 0) break;
    inflation += 2 * pair;
  }
  return n / Math.max(inflation, 1 / n);
};
