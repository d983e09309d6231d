import { deliveryOf } from './deliveredPower.ts';
import type { Machine } from '../machine/machine.ts';
import { cornerPowerPct, type Setting } from '../machine/setting.ts';

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

/** What the beam delivers while the head runs at a speed, in fractions of rated power: see `deliveryOf`. */
export interface RampedDelivery {
  /** On the power at full speed: above 0. */
  readonly full: number;
  readonly at: (speedMmPerS: number) => number;
  /** The speeds at which it bends. */
  readonly kinksMmPerS: readonly [rampStart: number, set: number];
}

/**
 * The controller's ramp through the tube, or null where the tube's readings do not tell what a power between corners and
 * full speed delivers, or where full power delivers nothing.
 */
export const rampedDelivery = (machine: Machine, setting: Setting): RampedDelivery | null => {
  const delivery = deliveryOf(machine);
  const full = delivery(setting.powerPct);
  if (full === null || full <= 0 || delivery(cornerPowerPct(setting)) === null) return null;
  const rampStart = machine.powerRampStartMmPerS ?? 0;
  return {
    full,
    at: (speed) => Math.max(0, delivery(rampedPowerPct(setting, speed, rampStart)) ?? full),
    kinksMmPerS: [rampStart, setting.speedMmPerS],
  };
};
