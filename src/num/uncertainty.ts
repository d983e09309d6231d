import { tQuantile } from './distributions.ts';
import { normalQuantile } from './normal.ts';

/** One input of a measured result: how much the result changes with it, and how well it is known. */
export interface UncertaintyComponent {
  readonly sensitivity: number;
  /** Standard uncertainty, in the input’s unit. */
  readonly u: number;
  /** Degrees of freedom behind it; Infinity where it is taken as known. */
  readonly degrees: number;
}

export interface CombinedUncertainty {
  /** |sensitivity|·u, each in the result’s unit. */
  readonly contributions: readonly number[];
  readonly combined: number;
  /** Effective degrees of freedom by Welch and Satterthwaite. */
  readonly effectiveDegrees: number;
}

/** Independent inputs combined to first order: JCGM 100:2008 (the GUM), 5.1.2 and G.4.1. */
export const combineUncertainty = (
  components: readonly UncertaintyComponent[],
): CombinedUncertainty => {
  const contributions = components.map(({ sensitivity, u }) => Math.abs(sensitivity) * u);
  const combined = Math.hypot(...contributions);
  const spread = components.reduce(
    (sum, { degrees }, i) => sum + ((contributions[i] ?? NaN) / combined) ** 4 / degrees,
    0,
  );
  return { contributions, combined, effectiveDegrees: combined === 0 ? Infinity : 1 / spread };
};

/**
 * By how many combined uncertainties a two-sided interval of this coverage reaches: a quantile of Student’s t. The GUM
 * (G.4.1) cuts the degrees of freedom down to a whole number first; so does this, unless told otherwise.
 */
export const coverageFactor = (
  coverage: number,
  degrees: number,
  { wholeDegrees = true } = {},
): number => {
  const used = wholeDegrees ? Math.max(1, Math.floor(degrees)) : degrees;
  const p = (1 + coverage) / 2;
  return used === Infinity ? normalQuantile(p) : tQuantile(p, used);
};

/** A mean with its standard uncertainty. */
export interface MeanOfReadings {
  readonly mean: number;
  /** Standard deviation of one reading. */
  readonly sd: number;
  /** Standard uncertainty of the mean. */
  readonly u: number;
  readonly degrees: number;
}

/** Repeated readings of one thing (type A, GUM 4.2); null for fewer than two. */
export const meanOfReadings = (readings: readonly number[]): MeanOfReadings | null => {
  const n = readings.length;
  if (n < 2) return null;
  const mean = readings.reduce((sum, value) => sum + value, 0) / n;
  const sd = Math.sqrt(readings.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
  return { mean, sd, u: sd / Math.sqrt(n), degrees: n - 1 };
};

export type LimitShape = 'rectangular' | 'triangular' | 'arcsine';

const divisors: Readonly<Record<LimitShape, number>> = {
  rectangular: Math.sqrt(3),
  triangular: Math.sqrt(6),
  arcsine: Math.SQRT2,
};

/** Standard uncertainty of a value known only to lie within ± a half-width (type B, GUM 4.3.7, 4.3.9). */
export const limitsUncertainty = (halfWidth: number, shape: LimitShape = 'rectangular'): number =>
  halfWidth / divisors[shape];
