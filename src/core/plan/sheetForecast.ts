import { seededRandom } from '../../num/seededRandom.ts';
import type { PlanPoints } from './planPoints.ts';
import { meanOver, sureOfShare, type PricedSpeed } from './pricedSpeed.ts';
import { playSheet } from './sheetCounts.ts';
import type { SpeedGrid } from './speedGrid.ts';

/** What is to be expected of the sheet that is cut next. */
export interface SheetForecast {
  readonly parts: number;
  /** Sound parts that should not come out, on average. */
  readonly notOut: number;
  /** No more than so many, nineteen times in twenty. */
  readonly notOutAtMost: number;
  /** Of 100 sound parts at the sheet's main setting so many should come out. */
  readonly outOf100: number;
  /** How sure it is that the main setting keeps the promise. */
  readonly sureOfPromisePct: number;
}

/** Where the fastest speed that keeps the promise lies, by what is known; null: slower than any that may be cut. */
export interface KeptUpTo {
  /** As sure as was asked for. */
  readonly sureMmPerS: number | null;
  /** As likely as not. */
  readonly evenMmPerS: number | null;
  /** Hardly any faster: as unlikely as `sureMmPerS` is sure. */
  readonly hardlyMmPerS: number | null;
}

/** Sheets that are played to see how badly one may turn out. */
const played = 400;

/** Any whole number: the same sheets for the same question. */
const seed = 40_111;

/** Foretells a sheet of several settings, the main one first. O(played · parts). */
export const forecastSheet = (
  points: PlanPoints,
  weights: Float64Array,
  settings: readonly { readonly speed: PricedSpeed; readonly parts: number }[],
  promisedShare: number,
): SheetForecast => {
  const parts = settings.reduce((sum, one) => sum + one.parts, 0);
  const notOut = settings.reduce(
    (sum, { speed, parts: some }) => sum + some * (1 - meanOver(weights, speed.outShare)),
    0,
  );
  const main = settings[0]?.speed;
  const random = seededRandom(seed);
  const cuts = settings.map(({ speed, parts: some }) => ({ odds: speed.odds, parts: some }));
  const counts = Array.from({ length: played }, (_, k) => {
    const point = Math.floor(((k + 0.5) * points.count) / played);
    const ends = playSheet(cuts, point, points.count, random);
    return ends.reduce((sum, { hangs, stays }) => sum + hangs + stays, 0);
  }).sort((a, b) => a - b);
  return {
    parts,
    notOut,
    notOutAtMost: counts[Math.ceil(0.95 * played) - 1] ?? parts,
    outOf100: main === undefined ? 0 : 100 * meanOver(weights, main.outShare),
    sureOfPromisePct: main === undefined ? 0 : 100 * sureOfShare(weights, main, promisedShare),
  };
};

/**
 * How fast the promise is kept: a faster speed never keeps it more surely, so each place is found by halving. O(log speeds).
 * Where what is cut may weld back it may, so each is looked at from the fastest on.
 */
export const keptUpTo = (
  grid: SpeedGrid,
  weights: Float64Array,
  promise: { readonly outOf100: number; readonly surePct: number },
): KeptUpTo => {
  const surenesses = new Map<number, number>();
  const surenessAt = (index: number): number => {
    const known = surenesses.get(index);
    if (known !== undefined) return known;
    const sureness = sureOfShare(weights, grid.priced(index), promise.outOf100 / 100);
    surenesses.set(index, sureness);
    return sureness;
  };
  const fastest = (sure: number): number | null => {
    if (!grid.slowerIsSurer) {
      return grid.speeds.findLast((_, index) => surenessAt(index) >= sure) ?? null;
    }
    let [below, above] = [-1, grid.speeds.length];
    while (above - below > 1) {
      const middle = (below + above) >> 1;
      if (surenessAt(middle) >= sure) below = middle;
      else above = middle;
    }
    return grid.speeds[below] ?? null;
  };
  const sure = promise.surePct / 100;
  return {
    sureMmPerS: fastest(sure),
    evenMmPerS: fastest(0.5),
    hardlyMmPerS: fastest(1 - sure),
  };
};
