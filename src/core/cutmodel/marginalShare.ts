import { normalCdf, normalQuantile } from '../../num/normal.ts';
import type { Link } from './links.ts';

/**
 * The share of sound parts that come out, averaged over sheets (and batches):
 *
 *     share(m) = E[ F((m + s·Z)/σ)ᴸ ],  Z ~ N(0, 1)
 *
 * s is the scatter that the promise averages over, L the part's length over the reference length (never below 1).
 */
export const marginalShare = (
  link: Link,
  margin: number,
  sigma: number,
  scatter: number,
  lengths: number,
): number => {
  if (link.name === 'normal' && lengths === 1)
    return normalCdf(margin / Math.hypot(sigma, scatter));
  if (scatter === 0) return link.quickCdf(margin / sigma) ** lengths;
  // The narrower F is against the scatter, the closer the nodes: errors stay below 1e-6.
  const [at, weights] = scatter < sigma ? [wideApart, wideApartWeights] : [coarse, coarseWeights];
  let sum = 0;
  for (let i = 0; i < at.length; i += 1) {
    const f = link.quickCdf((margin + scatter * (at[i] ?? NaN)) / sigma);
    sum += (weights[i] ?? NaN) * (lengths === 1 ? f : f ** lengths);
  }
  return sum;
};

/** Even nodes with normal weights: the trapezoid rule, which converges exponentially here. */
const nodes = (half: number, step: number): Float64Array =>
  Float64Array.from({ length: 2 * half + 1 }, (_, i) => (i - half) * step);
const normalWeights = (at: Float64Array): Float64Array => {
  const raw = at.map((z) => Math.exp(-0.5 * z * z));
  const sum = raw.reduce((a, b) => a + b, 0);
  return raw.map((w) => w / sum);
};
const wideApart = nodes(8, 0.6);
const wideApartWeights = normalWeights(wideApart);
const coarse = nodes(16, 0.3);
const coarseWeights = normalWeights(coarse);
const fine = nodes(60, 0.09);
const fineWeights = normalWeights(fine);

/**
 * The margin, in units of σ, at which the share reaches `share`, as a function of s/σ: tabulated once for each link,
 * share and length, then read by interpolation (error below 1e-5 of the margin).
 */
export const marginKeeping = (
  link: Link,
  share: number,
  lengths: number,
): ((scatterOverSigma: number) => number) => {
  if (link.name === 'normal' && lengths === 1) {
    const z = normalQuantile(share);
    return (ratio) => z * Math.sqrt(1 + ratio * ratio);
  }
  const key = `${link.name}/${String(share)}/${String(lengths)}`;
  const known = tables.get(key);
  if (known) return known;
  const table = tabulate(link, share, lengths);
  if (tables.size > 60) tables.clear();
  tables.set(key, table);
  return table;
};

/** Only a memory of what was computed: the same whatever was asked before. */
const tables = new Map<string, (ratio: number) => number>();

const tableSize = 48;
const largestRatio = 40;

const tabulate = (link: Link, share: number, lengths: number): ((ratio: number) => number) => {
  const top = Math.asinh(largestRatio);
  // Divided by √(1 + ratio²) the margin hardly varies, so that a straight line between nodes is enough.
  const scaled = Float64Array.from({ length: tableSize + 1 }, (_, i) => {
    const ratio = Math.sinh((i * top) / tableSize);
    return solve(link, share, lengths, ratio) / Math.sqrt(1 + ratio * ratio);
  });
  return (ratio) => {
    const place = Math.min(tableSize - 1e-9, (Math.asinh(ratio) * tableSize) / top);
    const i = Math.floor(place);
    const low = scaled[i] ?? NaN;
    return (low + (place - i) * ((scaled[i + 1] ?? NaN) - low)) * Math.sqrt(1 + ratio * ratio);
  };
};

/** Bisection, then nothing: 1e-9 of the bracket, at a known cost. */
const solve = (link: Link, share: number, lengths: number, ratio: number): number => {
  let low = -40 * (1 + ratio);
  let high = 400 * (1 + ratio);
  for (let step = 0; step < 46; step += 1) {
    const middle = 0.5 * (low + high);
    let sum = 0;
    if (ratio === 0) sum = link.cdf(middle) ** lengths;
    else {
      for (let i = 0; i < fine.length; i += 1) {
        sum +=
          (fineWeights[i] ?? NaN) * link.quickCdf(middle + ratio * (fine[i] ?? NaN)) ** lengths;
      }
    }
    if (sum < share) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
};
