import { cholesky, choleskyInto, choleskySolve } from './cholesky.ts';
import { quasiRandomPoints } from './quasiRandomPoints.ts';
import { normalQuantile } from './normal.ts';

/** A normal from which points are drawn: its mean and the lower Cholesky factor of its covariance, row-major. */
export interface NormalShape {
  readonly mean: Float64Array;
  readonly factor: Float64Array;
}

export interface SamplingWish {
  readonly size: number;
  /** ln of the density to be sampled, up to a constant. */
  readonly logDensity: (z: Float64Array) => number;
  /** Where to begin: about every mode that is known. */
  readonly starts: readonly NormalShape[];
  /**
   * A wide normal, the prior's for one, from which a tenth of every round is drawn: a shoulder far from all modes would
   * else be met by no point, and nothing would tell. A defensive mixture: Hesterberg (1995), Technometrics 37:185.
   */
  readonly guard: NormalShape;
  /** The coordinate along which the density may bend: later rounds take it in three parts. */
  readonly bendsAlong: number;
  /** Points of each round. */
  readonly points: number;
  readonly mostRounds: number;
  /** Effective points at which it ends. */
  readonly enough: number;
}

/** Weighted points: z of one after the other, and ln of density over proposal. */
export interface Sample {
  readonly count: number;
  readonly z: Float64Array;
  readonly logWeight: Float64Array;
  /** Kish's number. */
  readonly effective: number;
}

/** One normal of a round's mixture, with its share of the round's points and what its densities are multiplied by. */
interface Part extends NormalShape {
  readonly share: number;
  readonly height: number;
}

/**
 * Each normal is drawn at three widths, so that tails heavier than its own are met. Narrower ones (3.5 for a tenth) left the
 * slow tail of answers after orders short by a tenth of the posterior's sd at the 5 % quantile, and its sd by 3 %, however
 * many points were drawn.
 */
const widths = [
  { times: 1.1, share: 0.5 },
  { times: 2, share: 0.35 },
  { times: 4, share: 0.15 },
] as const;

/**
 * Adaptive multiple importance sampling: points are drawn from a mixture of normals, weighed, and the next round's mixture is
 * made from all of them; every point is weighed against the mixture of all rounds, so that none of them is lost and none
 * weighs too much. Cornuet, Marin, Mira & Robert (2012), Scand. J. Stat. 39:798. On a fixed quasi-random sequence: equal
 * input, equal points. O(rounds · points · (a density + parts · size²)).
 */
export const sampleAdaptively = (wish: SamplingWish): Sample => {
  const { size, points, mostRounds } = wish;
  const most = points * mostRounds;
  const z = new Float64Array(most * size);
  const log = new Float64Array(most);
  /** Sum over the rounds of their mixtures' densities, and ln of it: over `unit`, so that none of them overflows. */
  const proposed = new Float64Array(most);
  const logProposed = new Float64Array(most);
  const cube = quasiRandomPoints(size + 1);
  const weights = new Float64Array(most);
  const at = new Float64Array(size);
  const work = new Float64Array(size);
  const rounds: (readonly Part[])[] = [];
  const unit = Math.max(...wish.starts.map(logConstantOf));
  let parts = shared(standing(wish, 1 - ofGuard), unit);
  let count = 0;
  let effective = 0;
  for (let round = 0; round < mostRounds; round += 1) {
    rounds.push(parts);
    for (let i = 0; i < count + points; i += 1) {
      if (i < count) {
        for (let d = 0; d < size; d += 1) at[d] = z[i * size + d] ?? NaN;
        proposed[i] = (proposed[i] ?? NaN) + mixtureAt(parts, at, work);
      } else {
        for (let d = 0; d < size; d += 1) work[d] = normalQuantile(cube.at(i, d));
        drawInto(parts, cube.at(i, size), work, at);
        z.set(at, i * size);
        log[i] = wish.logDensity(at);
        for (const one of rounds) proposed[i] = (proposed[i] ?? NaN) + mixtureAt(one, at, work);
      }
      logProposed[i] = Math.log(proposed[i] ?? NaN);
    }
    count += points;
    effective = weighInto(weights, log, logProposed, count);
    if (effective >= wish.enough) break;
    if (round + 1 < mostRounds) {
      parts = nextParts(wish, { z, weights, count, effective }, unit);
    }
  }
  const perRound = Math.log(rounds.length) - unit;
  return {
    count,
    z: z.subarray(0, count * size),
    logWeight: log.subarray(0, count).map((value, i) => value - (logProposed[i] ?? NaN) + perRound),
    effective,
  };
};

/** Writes weights that sum to 1; gives Kish's number. */
const weighInto = (
  weights: Float64Array,
  log: Float64Array,
  logProposed: Float64Array,
  count: number,
): number => {
  let most = -Infinity;
  for (let i = 0; i < count; i += 1)
    most = Math.max(most, (log[i] ?? NaN) - (logProposed[i] ?? NaN));
  if (most === -Infinity) return 0;
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < count; i += 1) {
    const weight = Math.exp((log[i] ?? NaN) - (logProposed[i] ?? NaN) - most);
    weights[i] = weight;
    sum += weight;
    squares += weight * weight;
  }
  for (let i = 0; i < count; i += 1) weights[i] = (weights[i] ?? NaN) / sum;
  return (sum * sum) / squares;
};

interface Weighed {
  readonly z: Float64Array;
  readonly weights: Float64Array;
  readonly count: number;
  readonly effective: number;
}

/** Fewer effective points than so many a dimension in each third do not bear a shape of their own. */
const thirdsFrom = 12;
const ofStarts = 0.1;
const ofGuard = 0.1;

/** The weighted points' own normal, or three of them along the bend; a tenth from where it began, and the guard. */
const nextParts = (wish: SamplingWish, seen: Weighed, unit: number): readonly Part[] => {
  const { starts, size, bendsAlong } = wish;
  const inThirds = seen.effective >= 3 * thirdsFrom * size;
  const edges = inThirds ? thirdsOf(seen, size, bendsAlong) : [];
  const groups = inThirds ? 3 : 1;
  const groupOf = (i: number): number => {
    const x = seen.z[i * size + bendsAlong] ?? NaN;
    return edges.filter((edge) => x > edge).length;
  };
  const shapes: { mean: Float64Array; factor: Float64Array; share: number }[] = [];
  for (let group = 0; group < groups; group += 1) {
    const shape = shapeOf(seen, size, (i) => groups === 1 || groupOf(i) === group, starts);
    if (shape) shapes.push({ ...shape, share: (1 - ofStarts - ofGuard) / groups });
  }
  return shared([...shapes, ...standing(wish, ofStarts)], unit);
};

/** What every round holds: the starts with this share, and the guard. */
const standing = ({ starts, guard }: SamplingWish, ofAllStarts: number) => [
  ...starts.map((start) => ({ ...start, share: ofAllStarts / starts.length })),
  { ...guard, share: ofGuard },
];

const thirdsOf = (
  { z, weights, count }: Weighed,
  size: number,
  axis: number,
): readonly number[] => {
  const order = Array.from({ length: count }, (_, i) => i).sort(
    (a, b) => (z[a * size + axis] ?? NaN) - (z[b * size + axis] ?? NaN),
  );
  const edges: number[] = [];
  let below = 0;
  for (const i of order) {
    below += weights[i] ?? NaN;
    if (below >= (edges.length + 1) / 3 && edges.length < 2) edges.push(z[i * size + axis] ?? NaN);
  }
  return edges;
};

/** Weighted mean and covariance, the latter drawn towards the start's as far as there are few points. */
const shapeOf = (
  { z, weights, count }: Weighed,
  size: number,
  isOf: (i: number) => boolean,
  starts: readonly NormalShape[],
): NormalShape | null => {
  const mean = new Float64Array(size);
  const covariance = new Float64Array(size * size);
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < count; i += 1) {
    const weight = weights[i] ?? NaN;
    if (weight === 0 || !isOf(i)) continue;
    sum += weight;
    squares += weight * weight;
    for (let d = 0; d < size; d += 1)
      mean[d] = (mean[d] ?? NaN) + weight * (z[i * size + d] ?? NaN);
  }
  if (sum === 0) return null;
  for (let d = 0; d < size; d += 1) mean[d] = (mean[d] ?? NaN) / sum;
  for (let i = 0; i < count; i += 1) {
    const weight = (weights[i] ?? NaN) / sum;
    if (weight === 0 || !isOf(i)) continue;
    for (let a = 0; a < size; a += 1) {
      const off = weight * ((z[i * size + a] ?? NaN) - (mean[a] ?? NaN));
      for (let b = 0; b <= a; b += 1) {
        covariance[a * size + b] =
          (covariance[a * size + b] ?? NaN) + off * ((z[i * size + b] ?? NaN) - (mean[b] ?? NaN));
      }
    }
  }
  const start = starts[0];
  const towards = Math.min(1, size / ((sum * sum) / squares));
  for (let a = 0; a < size; a += 1) {
    for (let b = 0; b <= a; b += 1) {
      let ofStart = 0;
      for (let k = 0; k <= b; k += 1)
        ofStart += (start?.factor[a * size + k] ?? 0) * (start?.factor[b * size + k] ?? 0);
      const value = (covariance[a * size + b] ?? NaN) + towards * ofStart;
      covariance[a * size + b] = value;
      covariance[b * size + a] = value;
    }
    covariance[a * size + a] = (covariance[a * size + a] ?? NaN) + 1e-10;
  }
  const factor = new Float64Array(size * size);
  return choleskyInto(covariance, size, factor) ? { mean, factor } : null;
};

const logRootTwoPi = 0.5 * Math.log(2 * Math.PI);

/** ln of a normal's height at its mean. */
const logConstantOf = ({ mean, factor }: NormalShape): number => {
  const size = mean.length;
  let log = -size * logRootTwoPi;
  for (let d = 0; d < size; d += 1) log -= Math.log(factor[d * size + d] ?? NaN);
  return log;
};

const shared = (
  shapes: readonly (NormalShape & { readonly share: number })[],
  unit: number,
): readonly Part[] => {
  const whole = shapes.reduce((sum, { share }) => sum + share, 0);
  return shapes.map(({ mean, factor, share }) => ({
    mean,
    factor,
    share: share / whole,
    height: (share / whole) * Math.exp(logConstantOf({ mean, factor }) - unit),
  }));
};

/** Takes a part and a width by one number of the cube, and then a point of it by these standard normals. */
const drawInto = (
  parts: readonly Part[],
  u: number,
  normals: Float64Array,
  into: Float64Array,
): void => {
  let left = u;
  let chosen = parts[0];
  for (const part of parts) {
    chosen = part;
    if (left < part.share) break;
    left -= part.share;
  }
  if (chosen === undefined) return;
  left /= chosen.share;
  let times: number = widths[0].times;
  for (const width of widths) {
    times = width.times;
    if (left < width.share) break;
    left -= width.share;
  }
  const { mean, factor } = chosen;
  const size = mean.length;
  for (let a = 0; a < size; a += 1) {
    let sum = 0;
    for (let b = 0; b <= a; b += 1) sum += (factor[a * size + b] ?? NaN) * (normals[b] ?? NaN);
    into[a] = (mean[a] ?? NaN) + times * sum;
  }
};

/** A round's density at a point. Where one underflows no point of that round was drawn. */
const mixtureAt = (parts: readonly Part[], z: Float64Array, work: Float64Array): number => {
  const size = z.length;
  const [own, wider, widest] = widths;
  const ofOwn = own.share / own.times ** size;
  const ofWider = wider.share / wider.times ** size;
  const ofWidest = widest.share / widest.times ** size;
  let total = 0;
  for (const { mean, factor, height } of parts) {
    let squares = 0;
    for (let a = 0; a < size; a += 1) {
      let sum = (z[a] ?? NaN) - (mean[a] ?? NaN);
      for (let b = 0; b < a; b += 1) sum -= (factor[a * size + b] ?? NaN) * (work[b] ?? NaN);
      const step = sum / (factor[a * size + a] ?? NaN);
      work[a] = step;
      squares += step * step;
    }
    const half = -0.5 * squares;
    total +=
      height *
      (ofOwn * Math.exp(half / (own.times * own.times)) +
        ofWider * Math.exp(half / (wider.times * wider.times)) +
        ofWidest * Math.exp(half / (widest.times * widest.times)));
  }
  return total;
};

/** The normal about a mode whose minus second derivatives have this lower Cholesky factor. */
export const normalAtMode = (mean: Float64Array, curvatureFactor: Float64Array): NormalShape => {
  const size = mean.length;
  const covariance = new Float64Array(size * size);
  for (let d = 0; d < size; d += 1) {
    const unit = new Float64Array(size);
    unit[d] = 1;
    covariance.set(choleskySolve(curvatureFactor, size, unit), d * size);
  }
  for (let a = 0; a < size; a += 1) {
    for (let b = 0; b < a; b += 1) {
      const both = 0.5 * ((covariance[a * size + b] ?? NaN) + (covariance[b * size + a] ?? NaN));
      covariance[a * size + b] = both;
      covariance[b * size + a] = both;
    }
  }
  const factor = cholesky(covariance, size);
  if (factor) return { mean, factor };
  const plain = new Float64Array(size * size);
  for (let d = 0; d < size; d += 1)
    plain[d * size + d] = Math.sqrt(Math.max(1e-12, covariance[d * size + d] ?? NaN));
  return { mean, factor: plain };
};
