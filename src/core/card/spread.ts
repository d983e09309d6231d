import type { SeededRandom } from '../../num/seededRandom.ts';
import { distanceMm, type Point } from '../path/point.ts';

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
 * random start, pairs are swapped as long as that helps. O(swaps · cells · (cells + factors)), ~1 ms for 24 cells.
 */
export const spreadCells = (
  task: SpreadTask,
  random: Pick<SeededRandom, 'shuffle' | 'integer'>,
): readonly Point[] => {
  const count = task.spots.length;
  const costOf = costFor(task);
  /** Which spot each cell stands on. */
  const standing = random.shuffle(task.spots.map((_, spot) => spot));
  let cost = costOf(standing);
  for (let swap = 0; cost > 0 && swap < Math.min(60 * count, mostSwaps); swap += 1) {
    const a = random.integer(count);
    const b = random.integer(count);
    exchange(standing, a, b);
    const swapped = costOf(standing);
    if (swapped <= cost) cost = swapped;
    else exchange(standing, a, b);
  }
  return standing.map((spot): Point => task.spots[spot] ?? [0, 0]);
};

/** Beyond some fifty cells chance has evened out most of it already. */
const mostSwaps = 3000;

const exchange = (standing: number[], a: number, b: number): void => {
  const [atA, atB] = [standing[a] ?? NaN, standing[b] ?? NaN];
  standing[a] = atB;
  standing[b] = atA;
};

/** A correlation this small is as good as none: beyond it, chance may keep its say. */
const smallCorrelation = 0.1;
const costs = { correlation: 20, neighboursInSequence: 2, neighboursOfOneRung: 1 } as const;

const costFor = (task: SpreadTask): ((standing: readonly number[]) => number) => {
  const places = [unit(task.spots.map(([x]) => x)), unit(task.spots.map(([, y]) => y))];
  const factors = task.factors
    .map((factor) => unit(task.rungs.map((rung) => factor[rung] ?? NaN)))
    .filter((factor) => factor.some((value) => value !== 0));
  const near = task.spots.map((a) => task.spots.map((b) => distanceMm(a, b) < task.neighbourMm));
  return (standing) => {
    let cost = 0;
    for (const factor of factors) {
      for (const place of places) {
        let dot = 0;
        for (let i = 0; i < standing.length; i += 1) {
          dot += (factor[i] ?? NaN) * (place[standing[i] ?? NaN] ?? NaN);
        }
        cost += costs.correlation * Math.max(0, Math.abs(dot) - smallCorrelation);
      }
    }
    for (let i = 1; i < standing.length; i += 1) {
      const nearHere = near[standing[i] ?? NaN];
      if (nearHere?.[standing[i - 1] ?? NaN] === true) cost += costs.neighboursInSequence;
      for (let j = 0; j < i - 1; j += 1) {
        if (task.rungs[j] === task.rungs[i] && nearHere?.[standing[j] ?? NaN] === true) {
          cost += costs.neighboursOfOneRung;
        }
      }
    }
    return cost;
  };
};

/** Moved to mean 0 and scaled to length 1, so that a correlation is a dot product; all 0 where nothing varies. */
const unit = (values: readonly number[]): readonly number[] => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const length = Math.hypot(...values.map((value) => value - mean));
  return values.map((value) => (length < 1e-9 ? 0 : (value - mean) / length));
};
