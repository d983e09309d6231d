import type { SeededRandom } from '../../num/seededRandom.ts';
import { distanceMm, type Point } from '../path/point.ts';
import { correlation } from './correlation.ts';

export interface SpreadTask {
  /** Where a cell may stand; as many as there are cells. */
  readonly spots: readonly Point[];
  /** The rung of each cell, in the order of cutting. */
  readonly rungs: readonly number[];
  /** What varies from rung to rung, each a row by rung. */
  readonly factors: readonly (readonly number[])[];
  /** Spots nearer than this are neighbours. */
  readonly neighbourMm: number;
}

/**
 * A spot for each cell, in the order of cutting, such that: no factor goes with x or y (a wedge or a worn corner of the
 * bed does not pose as a setting), cells of one rung stand apart, and neighbours are not cut one after the other. From a
 * random start, pairs are swapped as long as that helps. O(swaps · cells · factors), a few ms for 24 cells.
 */
export const spreadCells = (
  task: SpreadTask,
  random: Pick<SeededRandom, 'shuffle' | 'integer'>,
): readonly Point[] => {
  const count = task.spots.length;
  const spots = random.shuffle(task.spots);
  let cost = costOf(task, spots);
  for (let swap = 0; swap < Math.min(60 * count, mostSwaps); swap += 1) {
    const a = random.integer(count);
    const b = random.integer(count);
    exchange(spots, a, b);
    const swapped = costOf(task, spots);
    if (swapped <= cost) cost = swapped;
    else exchange(spots, a, b);
  }
  return spots;
};

/** Beyond some fifty cells chance has evened out most of it already. */
const mostSwaps = 3000;

const exchange = (spots: Point[], a: number, b: number): void => {
  const [atA, atB] = [spots[a], spots[b]];
  if (atA === undefined || atB === undefined) return;
  spots[a] = atB;
  spots[b] = atA;
};

/** A correlation this small is as good as none: beyond it, chance may keep its say. */
const smallCorrelation = 0.1;

const costOf = (task: SpreadTask, spots: readonly Point[]): number => {
  const xs = spots.map(([x]) => x);
  const ys = spots.map(([, y]) => y);
  let cost = 0;
  for (const factor of task.factors) {
    const values = task.rungs.map((rung) => factor[rung] ?? 0);
    for (const place of [xs, ys]) {
      cost += 20 * Math.max(0, Math.abs(correlation(values, place)) - smallCorrelation);
    }
  }
  for (const [i, spot] of spots.entries()) {
    const before = spots[i - 1];
    if (before !== undefined && distanceMm(before, spot) < task.neighbourMm) cost += 2;
    for (let j = 0; j < i - 1; j += 1) {
      const other = spots[j];
      const sameRung = task.rungs[j] === task.rungs[i];
      if (sameRung && other !== undefined && distanceMm(other, spot) < task.neighbourMm) cost += 1;
    }
  }
  return cost;
};
