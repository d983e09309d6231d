import { keepsBounds, type Bounds } from './bounds.ts';
import type { PlanPoints } from './planPoints.ts';
import type { PlanWish } from './planWish.ts';
import { meanOver, priceSpeed, type PricedSpeed } from './pricedSpeed.ts';

/** The speeds of a plan, rising, each priced when it is first asked for. */
export interface SpeedGrid {
  readonly speeds: readonly number[];
  /** `index` into the speeds; one beyond an end stands for that end. */
  readonly priced: (index: number) => PricedSpeed;
  /** Where a speed stands; −1 where it is none of them. */
  readonly indexOf: (speedMmPerS: number) => number;
  /** Whether slower is never less sure; it is where what is cut through may weld back. */
  readonly slowerIsSurer: boolean;
}

/** From one speed to the next, times; those below 5 mm/s go by 0.1. */
const ratio = 1.02;

/** All speeds, to 0.1 mm/s, that a sheet may be cut at from the slowest to the fastest; `also` stands among them. */
export const speedGrid = (
  points: PlanPoints,
  wish: Pick<PlanWish, 'partLengthMm' | 'costS'>,
  { slowest, fastest, also }: { slowest: number; fastest: number; also: readonly number[] },
): SpeedGrid => {
  const list = new Set<number>();
  for (let speed = slowest; speed <= fastest; speed *= ratio) {
    list.add(Math.max(0.1, Math.floor(speed * 10 + 1e-9) / 10));
  }
  for (const speed of also) list.add(speed);
  const speeds = [...list].sort((a, b) => a - b);
  const known = new Map<number, PricedSpeed>();
  return {
    speeds,
    slowerIsSurer: points.openAt === undefined,
    indexOf: (speedMmPerS) => speeds.findIndex((one) => Math.abs(one - speedMmPerS) < 1e-6),
    priced: (index) => {
      const at = Math.min(speeds.length - 1, Math.max(0, index));
      const before = known.get(at);
      if (before) return before;
      const made = priceSpeed(points, wish, speeds[at] ?? slowest);
      known.set(at, made);
      return made;
    },
  };
};

/**
 * The index of the speed at which a good part is expected to cost least among those within bounds. Cost and bounds have one
 * turn each, so it is walked to from `from`. Where none keeps the bounds: the one of which most come out, which is the slowest
 * where nothing welds back.
 */
export const bestSpeed = (
  grid: SpeedGrid,
  weights: Float64Array,
  bounds: Bounds,
  from: number,
): number => {
  const costAt = (index: number): number => meanOver(weights, grid.priced(index).costS);
  const allowed = (index: number): boolean => keepsBounds(weights, grid.priced(index), bounds);
  const last = grid.speeds.length - 1;
  let at = Math.min(last, Math.max(0, from));
  while (at > 0 && !allowed(at)) at -= 1;
  if (!grid.slowerIsSurer && !allowed(at)) {
    while (at < last && !allowed(at)) at += 1;
    if (!allowed(at)) return mostComeOut(grid, weights, bounds);
  }
  while (at < last && allowed(at + 1) && costAt(at + 1) < costAt(at)) at += 1;
  while (at > 0 && costAt(at - 1) < costAt(at) && (grid.slowerIsSurer || allowed(at - 1))) at -= 1;
  return at;
};

/** The index of the speed of which most parts are expected to come out, none faster than anything near it was seen to. */
const mostComeOut = (grid: SpeedGrid, weights: Float64Array, bounds: Bounds): number => {
  let [most, best] = [-Infinity, 0];
  for (const [index, speedMmPerS] of grid.speeds.entries()) {
    if (speedMmPerS > bounds.fastestMmPerS + 1e-9) break;
    const share = meanOver(weights, grid.priced(index).outShare);
    if (share > most) [most, best] = [share, index];
  }
  return best;
};
