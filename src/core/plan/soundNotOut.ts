import type { Tally } from '../reading/tally.ts';
import type { PlanPoints } from './planPoints.ts';
import type { PlanWish } from './planWish.ts';
import { priceSpeed, type PricedSpeed } from './pricedSpeed.ts';

interface SeenFrom {
  readonly points: PlanPoints;
  readonly wish: PlanWish;
  /** Of the points. */
  readonly powerPct: number;
}

/**
 * Sound parts of this order that did not come out. A flaw that was overlooked is counted with them, one or two parts in a
 * hundred, which would hide what the speed costs: so it is what is expected of the speeds at which they were cut, by all that
 * is known by now; at another power or in more passes it is what was counted.
 */
export const soundNotOut = (
  tallies: readonly Tally[],
  { points, wish, powerPct }: SeenFrom,
): number => {
  let [notOut, before] = [0, 0];
  for (const { setting, out, hangs, stays } of tallies.toReversed()) {
    if (before >= wish.done) break;
    before += out + hangs;
    const isOfPlan = setting.passes === 1 && Math.abs(setting.powerPct - powerPct) < 1e-9;
    notOut += isOfPlan
      ? (out + hangs + stays) * (1 - expectedOut(priceSpeed(points, wish, setting.speedMmPerS)))
      : hangs + stays;
  }
  return notOut;
};

const expectedOut = ({ outShare }: PricedSpeed): number =>
  outShare.reduce((sum, share) => sum + share, 0) / outShare.length;
