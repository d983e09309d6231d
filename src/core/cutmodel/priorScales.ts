import {
  inverseMills,
  logNormalCdf,
  normalCdf,
  normalPdf,
  normalQuantile,
} from '../../num/normal.ts';
import { tabulate } from '../../num/tabulate.ts';

/**
 * A belief about a scale of scatter: a normal about `mode` with standard deviation `scale`, cut off at 0. With mode 0 it is
 * the half-normal.
 */
export interface ScalePrior {
  readonly mode: number;
  readonly scale: number;
}

/** The scale at a standard normal z: m − s·Φ⁻¹(Φ(m/s)·Φ(−z)). */
export const scaleAt = (prior: ScalePrior, z: number): number =>
  prior.mode === 0
    ? prior.scale * quickHalfNormal(z)
    : prior.mode - prior.scale * normalQuantile(keptOf(prior) * normalCdf(-z));

/** The commonest beliefs are read from tables, right to 1e-9: they stand in the inner loop of every answer. */
const table = { low: -9, high: 9, stepsPerUnit: 64 } as const;
const halfNormal = (z: number): number => -normalQuantile(0.5 * normalCdf(-z));
const quickHalfNormal = tabulate(
  halfNormal,
  (z) => (0.5 * normalPdf(z)) / normalPdf(halfNormal(z)),
  table,
);
const quickExponential = tabulate(
  (z) => -logNormalCdf(-z),
  (z) => inverseMills(-z),
  table,
);

/** How fast it changes with z. */
export const scaleSlopeAt = (prior: ScalePrior, z: number): number => {
  const kept = keptOf(prior);
  return (prior.scale * kept * normalPdf(z)) / normalPdf(normalQuantile(kept * normalCdf(-z)));
};

/** The share of the normal that is not cut off. */
const keptOf = ({ mode, scale }: ScalePrior): number =>
  mode === 0 ? 0.5 : normalCdf(mode / scale);

export const meanSdOfScale = ({ mode, scale }: ScalePrior): { mean: number; sd: number } => {
  const { mean, sd } = cutOff(mode / scale);
  return { mean: scale * mean, sd: scale * sd };
};

/**
 * The belief with this mean and standard deviation; the half-normal of this mean where the spread is as great as a
 * half-normal's or greater.
 */
export const scaleWith = (mean: number, sd: number): ScalePrior => {
  let low = 0;
  let high = 40;
  for (let i = 0; i < 60; i += 1) {
    const middle = 0.5 * (low + high);
    const at = cutOff(middle);
    if (at.sd / at.mean > sd / mean) low = middle;
    else high = middle;
  }
  const scale = mean / cutOff(low).mean;
  return { mode: low * scale, scale };
};

/** Mean and standard deviation of N(t, 1) cut off at 0 (Johnson, Kotz & Balakrishnan 1994, vol. 1, 13.10). */
const cutOff = (t: number): { readonly mean: number; readonly sd: number } => {
  const hazard = normalPdf(t) / normalCdf(t);
  return { mean: t + hazard, sd: Math.sqrt(1 - t * hazard - hazard * hazard) };
};

/** A belief about a rate by mean and standard deviation: exponential where they are equal, else about a gamma. */
export interface RatePrior {
  readonly mean: number;
  readonly sd: number;
}

interface Slope {
  readonly value: number;
  readonly slope: number;
}

/**
 * The rate at a standard normal z, and how fast it changes. Exponential: −mean·ln Φ(−z). Else the cube of a normal, which
 * is the gamma of this mean and standard deviation to within a few per cent (Wilson & Hilferty 1931, PNAS 17:684).
 */
export const rateAt = ({ mean, sd }: RatePrior, z: number): Slope => {
  if (sd >= mean) {
    const above = Math.max(1e-300, normalCdf(-z));
    return { value: -mean * Math.log(above), slope: (mean * normalPdf(z)) / above };
  }
  const share = (sd / mean) ** 2 / 9;
  const root = Math.max(0, 1 - share + Math.sqrt(share) * z);
  return { value: mean * root ** 3, slope: 3 * mean * root ** 2 * Math.sqrt(share) };
};

/** The rate alone, where the slope is not wanted. */
export const quickRateAt = (prior: RatePrior, z: number): number =>
  prior.sd >= prior.mean ? prior.mean * quickExponential(z) : rateAt(prior, z).value;
