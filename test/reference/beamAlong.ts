import { gaussLegendre } from '../../src/num/gaussLegendre.ts';
import type { Machine } from '../../src/core/machine/machine.ts';
import type { Setting } from '../../src/core/machine/setting.ts';
import type { PathPlan } from '../../src/core/motion/planPath.ts';
import { rampedDelivery, type RampedDelivery } from '../../src/core/tube/powerRamp.ts';
import { pieceAt, speedAlong, speedAt, type SpeedAlong } from '../../src/core/motion/speedAlong.ts';

/** What the beam does along one line. Places are in mm from its start. */
export interface BeamAlong {
  readonly speeds: SpeedAlong;
  /** The fraction of rated power that is delivered at a place: see `deliveryOf`. */
  readonly deliveredAt: (atMm: number) => number;
  /**
   * Delivered power over speed at a place, as a multiple of the same at full power and the set speed. Infinity where the
   * head stands with the beam on.
   */
  readonly energyRatioAt: (atMm: number) => number;
  /** The same over a stretch: the energy that falls on it over its length. Finite at rest too. */
  readonly energyRatioBetween: (fromMm: number, toMm: number) => number;
}

/**
 * Delivered power and line energy along a planned line with the controller's power ramp, or null where the tube's
 * readings do not tell what a power between corners and full speed delivers, or where full power delivers nothing.
 */
export const beamAlong = (plan: PathPlan, machine: Machine, setting: Setting): BeamAlong | null => {
  const ramped = rampedDelivery(machine, setting);
  if (ramped === null) return null;
  const speeds = speedAlong(plan);
  const fullEnergy = ramped.full / setting.speedMmPerS;
  return {
    speeds,
    deliveredAt: (atMm) => ramped.at(speedAt(speeds, atMm)),
    energyRatioAt: (atMm) => {
      const speed = speedAt(speeds, atMm);
      const delivered = ramped.at(speed);
      return delivered === 0 ? 0 : delivered / speed / fullEnergy;
    },
    energyRatioBetween: (fromMm, toMm) =>
      energyOver(speeds, [fromMm, toMm], ramped) / ((toMm - fromMm) * fullEnergy),
  };
};

const nodes = gaussLegendre(5, 0, 1);

/** ∫ power dt over a stretch. Within a piece speed is linear in time; each piece is parted where the ramp has its kinks. */
const energyOver = (
  { atMm, atS, speedMmPerS }: SpeedAlong,
  [fromMm, toMm]: readonly [number, number],
  ramped: RampedDelivery,
): number => {
  let energy = 0;
  for (let i = pieceAt(atMm, fromMm); i + 1 < atMm.length && (atMm[i] ?? NaN) < toMm; i += 1) {
    const [startMm, endMm] = [atMm[i] ?? NaN, atMm[i + 1] ?? NaN];
    if (!(endMm > startMm)) continue;
    const [v0, v1] = [speedMmPerS[i] ?? NaN, speedMmPerS[i + 1] ?? NaN];
    const shareAt = (mm: number): number =>
      Math.min(1, Math.max(0, (mm - startMm) / (endMm - startMm)));
    const speedOf = (mm: number): number => Math.sqrt(v0 * v0 + shareAt(mm) * (v1 * v1 - v0 * v0));
    const [from, to] = [speedOf(fromMm), speedOf(toMm)];
    const pieceS = (atS[i + 1] ?? NaN) - (atS[i] ?? NaN);
    const seconds =
      v0 === v1 ? pieceS * (shareAt(toMm) - shareAt(fromMm)) : (pieceS * (to - from)) / (v1 - v0);
    energy += seconds * meanPower(from, to, ramped);
  }
  return energy;
};

/** Mean over a stretch of time in which the speed runs evenly from one figure to another. */
const meanPower = (
  from: number,
  to: number,
  { at: powerAt, kinksMmPerS }: RampedDelivery,
): number => {
  if (from === to) return powerAt(from);
  const within = kinksMmPerS.filter((kink) => (kink - from) * (kink - to) < 0);
  const marks = [from, ...within, to].sort((a, b) => (to > from ? a - b : b - a));
  return marks.reduce((sum, mark, i) => {
    const before = marks[i - 1] ?? mark;
    const part = (mark - before) / (to - from);
    const mean = nodes.x.reduce(
      (total, x, k) => total + (nodes.weights[k] ?? NaN) * powerAt(before + x * (mark - before)),
      0,
    );
    return sum + part * mean;
  }, 0);
};
