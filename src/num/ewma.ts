import type { Interval } from './binomialInterval.ts';

export interface EwmaChart {
  /** The averages, beginning with the target itself. */
  readonly averages: readonly number[];
  /** Where the limits settle after many observations. */
  readonly asymptoticLimits: Interval;
  /** Half the distance between the exact limits at each observation: narrower at first. */
  readonly exactHalfWidths: readonly number[];
  /** The first observation, counted from 1, whose average lies outside; null where none does. */
  readonly firstSignalAsymptotic: number | null;
  readonly firstSignalExact: number | null;
}

/**
 * Exponentially weighted moving averages against a target: zᵢ = λ·xᵢ + (1 − λ)·zᵢ₋₁ (Roberts 1959; NIST/SEMATECH
 * e-Handbook 6.3.2.4).
 *
 * @param lambda weight of the newest, 0 < λ ≤ 1. @param width limits in standard deviations of the average.
 */
export const ewmaChart = (
  x: readonly number[],
  given: {
    readonly lambda: number;
    readonly target: number;
    readonly sigma: number;
    readonly width: number;
  },
): EwmaChart => {
  const { lambda, target, sigma, width } = given;
  const averages = [target];
  for (const value of x) averages.push(lambda * value + (1 - lambda) * (averages.at(-1) ?? NaN));
  const settled = width * sigma * Math.sqrt(lambda / (2 - lambda));
  const exactHalfWidths = x.map((_, i) => settled * Math.sqrt(1 - (1 - lambda) ** (2 * (i + 1))));
  const firstOutside = (half: (i: number) => number): number | null => {
    const found = averages.slice(1).findIndex((z, i) => Math.abs(z - target) > half(i));
    return found < 0 ? null : found + 1;
  };
  return {
    averages,
    asymptoticLimits: [target - settled, target + settled],
    exactHalfWidths,
    firstSignalAsymptotic: firstOutside(() => settled),
    firstSignalExact: firstOutside((i) => exactHalfWidths[i] ?? NaN),
  };
};
