import type { Interval } from './binomialInterval.ts';
import type { BinaryFit } from './binaryRegression.ts';
import { links } from './link.ts';
import { normalQuantile } from './normal.ts';

export interface DoseEstimate {
  readonly dose: number;
  readonly standardError: number;
  /** Normal-theory limits from the delta method. */
  readonly deltaLimits: Interval;
  /** Fieller's limits; null where g ≥ 1, since what they then hold is no interval. */
  readonly fiellerLimits: Interval | null;
  /** z²·Var(slope)/slope²: below 1 where the slope differs from 0 at this confidence. */
  readonly fiellerG: number;
}

/**
 * The covariate at which a fitted straight line a + b·x on the link's scale reaches probability `p`, with its limits
 * (Finney 1971). The fit's first coefficient is a, its second b.
 */
export const doseAt = (fit: BinaryFit, p: number, confidence = 0.95): DoseEstimate => {
  const [a = NaN, b = NaN] = fit.coefficients;
  const [[vaa = NaN, vab = NaN] = [], [, vbb = NaN] = []] = fit.covariance;
  const level = links[fit.link].predictor(p);
  const z = normalQuantile((1 + confidence) / 2);
  const dose = (level - a) / b;
  const standardError = Math.sqrt(vaa + 2 * dose * vab + dose * dose * vbb) / Math.abs(b);
  const fiellerG = (z * z * vbb) / (b * b);
  // (a + b·m − level)² = z²·Var(a + b·m), a quadratic in the distance of m from the dose: no cancellation.
  const lean = (z * z * (vab + dose * vbb)) / (b * b);
  const open = 1 - fiellerG;
  const root = Math.sqrt(lean * lean + open * (z * standardError) ** 2);
  return {
    dose,
    standardError,
    deltaLimits: [dose - z * standardError, dose + z * standardError],
    fiellerLimits: fiellerG < 1 ? [dose + (lean - root) / open, dose + (lean + root) / open] : null,
    fiellerG,
  };
};
