/** Importance weights with their tail smoothed, and how heavy that tail is. */
export interface SmoothedWeights {
  /** Sum to 1. */
  readonly weight: Float64Array;
  /** Shape k of the tail: up to 0.7 weighted means may be relied on (section 3 of the source); Infinity: no tail to fit. */
  readonly shape: number;
  /** Kish's effective number of points. */
  readonly effectivePoints: number;
}

const leastTail = 4;

/**
 * Pareto-smoothed importance sampling: the largest weights, of which min(n/5, 3√n) are the tail, are replaced by the
 * quantiles of a generalised Pareto distribution fitted to them. Vehtari, Simpson, Gelman, Yao & Gabry (2024), JMLR 25(72);
 * as used to leave one observation out in Vehtari, Gelman & Gabry (2017), Stat. Comput. 27. O(n log n).
 */
export const paretoSmoothed = (logWeights: Float64Array): SmoothedWeights => {
  const n = logWeights.length;
  let most = -Infinity;
  for (const value of logWeights) if (value > most) most = value;
  const weight = Float64Array.from(logWeights, (value) => Math.exp(value - most));
  const order = Uint32Array.from({ length: n }, (_, i) => i).sort(
    (a, b) => (weight[a] ?? NaN) - (weight[b] ?? NaN),
  );
  const wanted = Math.ceil(Math.min(n / 5, 3 * Math.sqrt(n)));
  const cut = weight[order[n - wanted - 1] ?? NaN] ?? NaN;
  const tail = [...order.subarray(n - wanted)].filter((i) => (weight[i] ?? NaN) > cut);
  let shape = Infinity;
  if (tail.length > leastTail) {
    const fitted = generalisedPareto(Float64Array.from(tail, (i) => (weight[i] ?? NaN) - cut));
    shape = fitted.shape;
    tail.forEach((i, rank) => {
      const smooth = cut + paretoQuantile((rank + 0.5) / tail.length, fitted);
      // No weight grows beyond the largest that was met.
      if (Number.isFinite(smooth)) weight[i] = Math.min(1, smooth);
    });
  }
  let sum = 0;
  let squares = 0;
  for (const w of weight) {
    sum += w;
    squares += w * w;
  }
  return { weight: weight.map((w) => w / sum), shape, effectivePoints: (sum * sum) / squares };
};

export interface Pareto {
  readonly shape: number;
  readonly scale: number;
}

/** The p-quantile of a generalised Pareto distribution that starts at 0. */
export const paretoQuantile = (p: number, { shape, scale }: Pareto): number =>
  Math.abs(shape) < 1e-12
    ? -scale * Math.log1p(-p)
    : (scale * Math.expm1(-shape * Math.log1p(-p))) / shape;

/** The weak prior on the shape: as much as ten points at 0.5. */
const priorShape = 0.5;
const priorPoints = 10;

/**
 * Fits a generalised Pareto distribution to ascending positive values by the empirical-Bayes estimator of Zhang & Stephens
 * (2009), Technometrics 51, with the weak prior on the shape of Vehtari et al. (2024). O(n·√n).
 */
export const generalisedPareto = (ascending: Float64Array): Pareto => {
  const n = ascending.length;
  const largest = ascending[n - 1] ?? NaN;
  const quartile = ascending[Math.max(0, Math.floor(n / 4 + 0.5) - 1)] ?? NaN;
  const grid = 30 + Math.floor(Math.sqrt(n));
  const candidates = Float64Array.from(
    { length: grid },
    (_, j) => 1 / largest + (1 - Math.sqrt(grid / (j + 0.5))) / (3 * quartile),
  );
  const shapeAt = (b: number): number => {
    let sum = 0;
    for (const x of ascending) sum += Math.log1p(-b * x);
    return sum / n;
  };
  const logLikelihood = candidates.map((b) => {
    const k = shapeAt(b);
    return n * (Math.log(-b / k) - k - 1);
  });
  let best = -Infinity;
  for (const value of logLikelihood) if (value > best) best = value;
  let total = 0;
  let mean = 0;
  logLikelihood.forEach((value, j) => {
    const weight = Math.exp(value - best);
    if (!(weight > 0)) return;
    total += weight;
    mean += weight * (candidates[j] ?? NaN);
  });
  const b = mean / total;
  const k = shapeAt(b);
  return { shape: (n * k + priorPoints * priorShape) / (n + priorPoints), scale: -k / b };
};
