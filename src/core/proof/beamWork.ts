import type { Machine } from '../machine/machine.ts';
import type { Setting } from '../machine/setting.ts';
import { rampedDelivery } from '../tube/powerRamp.ts';

/** Delivered power as a share of that at full speed, by the speed of the head; tabulated once for many lines. */
export interface BeamWork {
  readonly setMmPerS: number;
  /** The share at a speed. */
  readonly shareAt: (speedMmPerS: number) => number;
  /** Its mean over a stretch of time in which the speed runs evenly from one figure to another. */
  readonly meanShare: (fromMmPerS: number, toMmPerS: number) => number;
}

/** Steps of the table. The share is taken as straight between them: off by less than 1e-3 where the ramp has a kink. */
const steps = 2048;

/**
 * The controller's ramp and the tube as one table; null where the tube's readings do not tell what a power between corners
 * and full speed delivers, or where full power delivers nothing.
 */
export const beamWork = (machine: Machine, setting: Setting): BeamWork | null => {
  const ramped = rampedDelivery(machine, setting);
  if (ramped === null) return null;
  const { speedMmPerS: set } = setting;
  const share = Float64Array.from(
    { length: steps + 1 },
    (_, i) => ramped.at((set * i) / steps) / ramped.full,
  );
  /** ∫ share over speed, in steps of the table. */
  const sum = new Float64Array(steps + 1);
  for (let i = 0; i < steps; i += 1) {
    sum[i + 1] = (sum[i] ?? NaN) + ((share[i] ?? NaN) + (share[i + 1] ?? NaN)) / 2;
  }
  const shareAt = (speed: number): number => {
    const place = Math.min(steps, (Math.max(0, speed) * steps) / set);
    const i = Math.min(steps - 1, Math.floor(place));
    return (share[i] ?? NaN) + (place - i) * ((share[i + 1] ?? NaN) - (share[i] ?? NaN));
  };
  const summedTo = (speed: number): number => {
    const place = Math.min(steps, (Math.max(0, speed) * steps) / set);
    const i = Math.min(steps - 1, Math.floor(place));
    return (sum[i] ?? NaN) + ((place - i) * ((share[i] ?? NaN) + shareAt(speed))) / 2;
  };
  const near = set / steps;
  return {
    setMmPerS: set,
    shareAt,
    meanShare: (from, to) =>
      Math.abs(to - from) < near
        ? shareAt((from + to) / 2)
        : ((summedTo(to) - summedTo(from)) * set) / ((to - from) * steps),
  };
};
