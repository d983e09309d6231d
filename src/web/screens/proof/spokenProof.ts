import { problemOf, type Problem } from '../../../core/problem.ts';
import type { Setting } from '../../../core/machine/setting.ts';

/** All of a setting that a drawing's corners depend on, as far as it is said. */
export interface SpokenProof {
  readonly speedMmPerS?: number | undefined;
  readonly powerPct?: number | undefined;
  readonly minPowerPct?: number | undefined;
  readonly passes: number;
}

/** A controller takes no more in the corners than at full speed. */
export const cornerProblem = ({ powerPct, minPowerPct }: SpokenProof): Problem | undefined =>
  powerPct !== undefined && minPowerPct !== undefined && minPowerPct > powerPct
    ? problemOf('corner-power-too-high', { powerPct })
    : undefined;

/** What is said of a setting, to be changed. */
export const spokenOf = (setting: Setting | undefined): SpokenProof => ({
  speedMmPerS: setting?.speedMmPerS,
  powerPct: setting?.powerPct,
  minPowerPct: setting?.minPowerPct,
  passes: setting?.passes ?? 1,
});

/** Undefined while speed or power is missing, or the two powers disagree. The air is that of the setting before. */
export const wholeSetting = (
  spoken: SpokenProof,
  before: Setting | undefined,
): Setting | undefined => {
  const { speedMmPerS, powerPct, minPowerPct, passes } = spoken;
  if (cornerProblem(spoken) !== undefined) return undefined;
  if (speedMmPerS === undefined || powerPct === undefined || speedMmPerS <= 0 || powerPct <= 0) {
    return undefined;
  }
  const { air } = before ?? {};
  return {
    speedMmPerS,
    powerPct,
    ...(minPowerPct === undefined ? {} : { minPowerPct }),
    passes,
    ...(air === undefined ? {} : { air }),
  };
};
