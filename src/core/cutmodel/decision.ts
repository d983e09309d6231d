import type { SettingForecast } from './fitAnswer.ts';

/** What one promise means to each point of a posterior, ready to be asked about many settings. */
export interface Decision {
  /** The fastest speed, mm/s, at which the promise holds with the wanted certainty; null where the tube is dark, or where what is cut through welds back. */
  readonly fastestHolding: (powerPct: number, surePct?: number) => number | null;
  /** How sure the promise is at a setting, 0–1; `minPowerPct` is the power in corners, absent where it is the same. */
  readonly sureAt: (powerPct: number, speedMmPerS: number, minPowerPct?: number) => number;
  /** The expected share of sound parts that come out at a setting, 0–1. */
  readonly shareAt: (powerPct: number, speedMmPerS: number) => number;
  /** Quantile of v50 at a power, mm/s, for what the promise is of. */
  readonly v50Quantile: (powerPct: number, p: number) => number | null;
  /** For each point ln of the fastest speed that keeps the share at P0: for the design of the next card. */
  readonly lnFastestAtP0: Float64Array;
}

/** What one setting gives, by a decision. */
export const forecast = (
  decision: Decision,
  powerPct: number,
  speedMmPerS: number,
): SettingForecast => ({
  powerPct,
  speedMmPerS,
  outOf100Mean: 100 * decision.shareAt(powerPct, speedMmPerS),
  sureOfPromisePct: 100 * decision.sureAt(powerPct, speedMmPerS),
});
