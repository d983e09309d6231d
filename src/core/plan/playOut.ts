import { seededRandom, type SeededRandom } from '../../num/seededRandom.ts';
import { keepsBounds, type Bounds, type BoundsAt } from './bounds.ts';
import type { PlanPoints } from './planPoints.ts';
import type { PlanWish } from './planWish.ts';
import { meanOver } from './pricedSpeed.ts';
import { playSheet, weighedBy, type CutOdds } from './sheetCounts.ts';
import { bestSpeed, type SpeedGrid } from './speedGrid.ts';

/** A card that may be cut first, as a plan sees it. */
export interface TrialCard {
  readonly act: 'card';
  readonly rungs: readonly { readonly speedMmPerS: number; readonly cells: number }[];
  readonly cuts: readonly CutOdds[];
  /** The whole of it: laying down, typing, cutting, reading. */
  readonly seconds: number;
}

/** A sheet that may be cut next: indices into the grid with so many parts each, the main one first. */
export interface TrialSheet {
  readonly act: 'sheet';
  readonly settings: readonly { readonly index: number; readonly parts: number }[];
}

export type FirstAct = TrialCard | TrialSheet;

/** What a plan is made on. */
export interface PlanTable {
  readonly points: PlanPoints;
  readonly grid: SpeedGrid;
  readonly wish: PlanWish;
  readonly boundsAt: BoundsAt;
  /** Sound parts that did not come out so far. */
  readonly notOut: number;
  /** The grid's index of the setting that the machine holds now; −1: none of them. */
  readonly typed: number;
  /** After the first act: climb with every counted sheet, or stay at the first sheet's setting to the end. */
  readonly then: 'climb' | 'stay';
}

/** How one order played out. */
export interface PlayedOrder {
  readonly seconds: number;
  /** Expected sound parts that do not come out, of all parts cut. */
  readonly notOutShare: number;
}

/** Sheets that are played one by one; what is left then is cut at the setting that is best by then. */
const sheetsAhead = 6;

/** Any whole number: all acts are played with the same luck, so that they differ by what they are alone. */
const seed = 90_017;

/**
 * Plays the rest of the order so many times with `first` done first and each later sheet cut at the setting that is cheapest
 * within the bounds by what is known then: once for each of so many truths, taken evenly from the points. A rollout: Bertsekas,
 * Tsitsiklis & Wu (1997), J. Heuristics 3:245. O(trials · sheets · points).
 */
export const playOut = (
  table: PlanTable,
  first: FirstAct,
  trials: number,
): readonly PlayedOrder[] => {
  const random = seededRandom(seed);
  return Array.from({ length: trials }, (_, trial) => {
    const truth = Math.floor(((trial + 0.5) * table.points.count) / trials);
    return playOnce(table, first, truth, seededRandom(1 + random.integer(2 ** 31 - 2)));
  });
};

const playOnce = (
  table: PlanTable,
  first: FirstAct,
  truth: number,
  random: SeededRandom,
): PlayedOrder => {
  const { points, grid, wish, boundsAt, then } = table;
  const { costS, partsPerSheet } = wish;
  const wanted = wish.parts - wish.done;
  let weights: Float64Array = new Float64Array(points.count).fill(1 / points.count);
  let [seconds, notOut, left] = [0, 0, wanted];
  let { typed } = table;
  const learn = (cuts: readonly CutOdds[]): void => {
    weights = weighedBy(weights, cuts, playSheet(cuts, truth, points.count, random));
  };
  /** Cuts a sheet and says what it was; how long it takes is its mean over luck, which comes out the same and plays sooner. */
  const cutSheet = (settings: TrialSheet['settings']): readonly CutOdds[] => {
    seconds += costS.count;
    const held = typed;
    return settings.map(({ index, parts }, k) => {
      const priced = grid.priced(index);
      if (index !== held) seconds += costS.type;
      if (k === 0) typed = index;
      seconds += parts * (priced.costS[truth] ?? NaN);
      notOut += parts * (1 - (priced.outShare[truth] ?? NaN));
      left -= parts;
      return { odds: priced.odds, parts };
    });
  };
  let at = typed >= 0 ? typed : grid.speeds.length >> 1;
  if (first.act === 'card') {
    learn(first.cuts);
    seconds += first.seconds;
    typed = -1;
  } else {
    const cuts = cutSheet(first.settings);
    at = typed;
    if (left > 0) learn(cuts);
  }
  for (let sheet = 0; left > 0; sheet += 1) {
    const parts = Math.min(partsPerSheet, left);
    const bounds = boundsAt({ left, parts, notOut: table.notOut + notOut });
    if (then === 'climb' || typed < 0) at = bestSpeed(grid, weights, bounds, at);
    const index = settingNow({ ...table, bounds, typed }, weights, { best: at, left });
    if (sheet >= sheetsAhead || (then === 'stay' && typed >= 0)) {
      seconds += costS.count * (Math.ceil(left / partsPerSheet) - 1);
      cutSheet([{ index, parts: left }]);
    } else {
      const cuts = cutSheet([{ index, parts }]);
      if (left > 0 && then === 'climb') learn(cuts);
    }
  }
  return { seconds, notOutShare: notOut / wanted };
};

/**
 * The setting to go on with: the best, or the one that the machine holds where that keeps the bounds and typing another
 * costs more than it saves on the parts that are left.
 */
export const settingNow = (
  {
    grid,
    wish,
    bounds,
    typed,
  }: Pick<PlanTable, 'grid' | 'wish' | 'typed'> & { readonly bounds: Bounds },
  weights: Float64Array,
  { best, left }: { readonly best: number; readonly left: number },
): number => {
  if (typed < 0) return best;
  const held = grid.priced(typed);
  const mayBreak = typed > best || !grid.slowerIsSurer;
  if (mayBreak && !keepsBounds(weights, held, bounds)) return best;
  const saved = meanOver(weights, held.costS) - meanOver(weights, grid.priced(best).costS);
  return saved * left > wish.costS.type ? best : typed;
};
