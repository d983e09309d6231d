import type { Interval } from './binomialInterval.ts';
import { isotonic } from './isotonic.ts';

/** How many of `trials` responded at one dose, on the scale of the average (often a logarithm). */
export interface DoseResponse {
  readonly x: number;
  readonly trials: number;
  readonly responded: number;
}

export interface MeanTolerance {
  readonly mean: number;
  /** Null where the doses do not reach from none to all responding, or something was trimmed. */
  readonly standardError: number | null;
  /** mean ± 2 standard errors. */
  readonly limits: Interval | null;
}

/**
 * The mean tolerance without a model (Spearman 1908, Kärber 1931): the response shares, made to rise by weighted
 * pooling, are read as a polygonal distribution function and averaged over; with a share trimmed off at both ends
 * (Hamilton, Russo & Thurston 1977). Null where the shares do not reach from the trim to one minus the trim.
 *
 * @param data ascending in x. @param trim 0 ≤ trim < ½.
 */
export const spearmanKarber = (data: readonly DoseResponse[], trim = 0): MeanTolerance | null => {
  const shares = isotonic(
    data.map(({ trials, responded }) => responded / trials),
    data.map(({ trials }) => trials),
  ).fit;
  const [first = NaN, last = NaN] = [shares[0], shares.at(-1)];
  if (!(first <= trim && last >= 1 - trim)) return null;
  const corners = data.map(({ x }, i) => ({ x, p: shares[i] ?? NaN }));
  const mean =
    corners.slice(1).reduce((sum, right, i) => {
      const left = corners[i] ?? right;
      return sum + momentBetween(left, right, [trim, 1 - trim]);
    }, 0) /
    (1 - 2 * trim);
  if (trim > 0) return { mean, standardError: null, limits: null };
  const variance = data.slice(1, -1).reduce((sum, { trials }, i) => {
    const p = shares[i + 1] ?? NaN;
    const reach = ((corners[i + 2]?.x ?? NaN) - (corners[i]?.x ?? NaN)) / 2;
    return sum + ((p * (1 - p)) / trials) * reach * reach;
  }, 0);
  const standardError = Math.sqrt(variance);
  return { mean, standardError, limits: [mean - 2 * standardError, mean + 2 * standardError] };
};

interface Corner {
  readonly x: number;
  readonly p: number;
}

/** ∫ x dp along one straight piece, as far as p lies within the bounds. */
const momentBetween = (left: Corner, right: Corner, [low, high]: Interval): number => {
  const [from, to] = [Math.max(left.p, low), Math.min(right.p, high)];
  if (!(to > from)) return 0;
  const xAt = (p: number): number =>
    left.x + ((right.x - left.x) * (p - left.p)) / (right.p - left.p);
  return ((to - from) * (xAt(from) + xAt(to))) / 2;
};
