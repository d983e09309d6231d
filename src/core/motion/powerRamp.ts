import type { Setting } from '../machine/setting.ts';

/**
 * The power that a controller sends while the head runs at a speed: power in corners at or below the start of the ramp,
 * power at full speed at the set speed, in a straight line between. Where the set speed itself is not above the start,
 * all of it runs on power in corners. Common practice, no source.
 *
 * @param rampStartMmPerS a value of the machine; where nobody knows it, 0: the ramp begins at rest.
 * @returns per cent of the setting's scale, as sent.
 */
export const rampedPowerPct = (
  { powerPct, minPowerPct = powerPct, speedMmPerS: setSpeed }: Setting,
  speedMmPerS: number,
  rampStartMmPerS = 0,
): number => {
  if (minPowerPct >= powerPct) return powerPct;
  if (speedMmPerS <= rampStartMmPerS) return minPowerPct;
  if (speedMmPerS >= setSpeed) return powerPct;
  const share = (speedMmPerS - rampStartMmPerS) / (setSpeed - rampStartMmPerS);
  return minPowerPct + share * (powerPct - minPowerPct);
};
