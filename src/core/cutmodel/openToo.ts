import type { PromiseWish } from '../reading/promise.ts';
import type { Decision } from './decision.ts';
import type { Welding } from './welding.ts';

/** The share of sound parts that are cut through at a setting by one point of the posterior, and that point's weight. */
export interface ThroughByPoint {
  readonly weight: number;
  readonly shareAt: (powerPct: number, speedMmPerS: number, minPowerPct: number) => number;
}

/** Speeds that are looked through for one that neither fails to cut nor welds back, as shares of the one before. */
const step = 0.97;
const mostSteps = 60;
const refinements = 6;

/**
 * The same decision where what is cut through may weld back: a part comes out where it is cut and stays open. How many stay
 * open is taken by its mean over what is known: two dozen shapes seldom know both ends, and where it had to be as sure of this
 * one too, nine in ten workshops that have such a speed got no answer. `points`: some of the posterior's, for what welding
 * takes away; where it takes nothing away the decision is what it was, to the byte.
 */
export const openToo = (
  cutting: Decision,
  {
    welding,
    points,
    promise,
    lengths,
  }: {
    readonly welding: Welding;
    readonly points: readonly ThroughByPoint[];
    readonly promise: PromiseWish;
    readonly lengths: number;
  },
): Decision => {
  const share = promise.outOf100 / 100;
  const sureAt: Decision['sureAt'] = (powerPct, speedMmPerS, minPowerPct = powerPct) => {
    const least = share / welding.openAt({ powerPct, speedMmPerS }, lengths);
    let lost = 0;
    for (const { weight, shareAt } of points) {
      const through = shareAt(powerPct, speedMmPerS, minPowerPct);
      if (through >= share && through < least) lost += weight;
    }
    return Math.max(0, cutting.sureAt(powerPct, speedMmPerS, minPowerPct) - lost);
  };
  return {
    ...cutting,
    sureAt,
    shareAt: (powerPct, speedMmPerS) =>
      cutting.shareAt(powerPct, speedMmPerS) * welding.openAt({ powerPct, speedMmPerS }, lengths),
    fastestHolding: (powerPct, surePct = promise.surePct) => {
      const fastest = cutting.fastestHolding(powerPct, surePct);
      if (fastest === null) return null;
      const holds = (speed: number): boolean => 100 * sureAt(powerPct, speed) >= surePct - rounding;
      if (holds(fastest)) return fastest;
      let slower = fastest;
      for (let n = 0; n < mostSteps; n += 1) {
        slower *= step;
        // Slower still fewer stay open.
        if (welding.openAt({ powerPct, speedMmPerS: slower }, lengths) < share) return null;
        if (holds(slower)) return between(slower, slower / step, holds);
      }
      return null;
    },
  };
};

/** The fastest that holds is found by a quantile that is right to this many per cent. */
const rounding = 0.1;

/** Of two speeds, of which the slower holds and the faster does not, where that changes; on the side that holds. */
const between = (low: number, high: number, holds: (speed: number) => boolean): number => {
  let [slow, fast] = [low, high];
  for (let n = 0; n < refinements; n += 1) {
    const middle = Math.sqrt(slow * fast);
    if (holds(middle)) slow = middle;
    else fast = middle;
  }
  return slow;
};
