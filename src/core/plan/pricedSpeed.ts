import { oddsAt, overSheets, type PlanPoints, type SheetOdds } from './planPoints.ts';
import type { PlanWish } from './planWish.ts';

/** One speed with what it comes to at each point of a plan. */
export interface PricedSpeed {
  readonly speedMmPerS: number;
  /** Of parts as long as the order's. */
  readonly odds: SheetOdds;
  /** Share of sound parts that come out, averaged over sheets. */
  readonly outShare: Float64Array;
  /** Share of all parts that are good in the end: out or freed, no flaw. */
  readonly goodShare: Float64Array;
  /** Expected seconds of one part: its cut, its share of knife, and cutting it again where it is lost. */
  readonly costS: Float64Array;
}

/**
 * Of parts that meet a flaw so many are lost: those whose flaw is seen, and half of the others (four flaws in five are
 * seen for what they are; common practice, no source). The rest are freed with a knife.
 */
const lostOfFlawed = 0.9;

/**
 * What is lost is cut again on a later sheet: by then nobody cuts at the speed that lost it, but at about this share of the
 * believed changeover.
 */
const cutAgainShare = 0.7;

/** Prices a speed. O(points). */
export const priceSpeed = (
  points: PlanPoints,
  { partLengthMm, costS }: Pick<PlanWish, 'partLengthMm' | 'costS'>,
  speedMmPerS: number,
): PricedSpeed => {
  const { flawsPerMetre } = points;
  const odds = oddsAt(points, speedMmPerS, partLengthMm);
  const outShare = overSheets(odds.out, points.count);
  const hangShare = overSheets(odds.hangs, points.count);
  const soundAt = (i: number): number =>
    Math.exp((-(flawsPerMetre[i] ?? NaN) * partLengthMm) / 1000);
  const attemptS = partLengthMm / speedMmPerS + costS.part;
  const hangs = outShare.map((_, i) => {
    const sound = soundAt(i);
    return sound * (hangShare[i] ?? NaN) + (1 - lostOfFlawed) * (1 - sound);
  });
  const goodShare = outShare.map((out, i) => soundAt(i) * out + (hangs[i] ?? NaN));
  const lostS = costS.recut + partLengthMm / (cutAgainShare * believedMmPerS(points)) + costS.part;
  const cost = goodShare.map(
    (good, i) => attemptS + (hangs[i] ?? NaN) * costS.knife + (1 - good) * lostS,
  );
  return { speedMmPerS, odds, outShare, goodShare, costS: cost };
};

const believedMmPerS = ({ level, count }: PlanPoints): number =>
  Math.exp(level.reduce((sum, one) => sum + one, 0) / count);

/** The mean of a figure over the points with their weights, which sum to 1. */
export const meanOver = (weights: Float64Array, of: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < weights.length; i += 1) sum += (weights[i] ?? NaN) * (of[i] ?? NaN);
  return sum;
};

/** How sure it is, 0–1, that at least a share of sound parts comes out. */
export const sureOfShare = (weights: Float64Array, speed: PricedSpeed, share: number): number => {
  let sum = 0;
  for (let i = 0; i < weights.length; i += 1) {
    if ((speed.outShare[i] ?? NaN) >= share) sum += weights[i] ?? NaN;
  }
  return sum;
};
