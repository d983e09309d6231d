import type { CutStudy } from './cutStudy.ts';

/** Two powers that a person would call the same. */
const samePowerPct = 0.5;

/** A cell of another thickness reaches nothing here. */
const mostThicknessOff = 0.08;

interface Spot {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly passes: number;
}

/** What was really cut on a stock: cells that were read and orders that were counted. A habit is hearsay. */
export interface Reach {
  readonly cut: readonly Spot[];
  readonly out: readonly Spot[];
}

export const reachOf = ({ cells, tallies, stock }: CutStudy): Reach => {
  const graded = cells.filter(
    ({ grade, spoilt, thicknessMm = stock.thicknessMm }) =>
      grade !== undefined &&
      spoilt === undefined &&
      Math.abs(thicknessMm / stock.thicknessMm - 1) <= mostThicknessOff,
  );
  return {
    cut: [...graded, ...tallies.map(({ setting }) => setting)],
    out: [
      ...graded.filter(({ grade }) => grade === 'out'),
      ...tallies.filter(({ out }) => out > 0).map(({ setting }) => setting),
    ],
  };
};

/** Whether a power lies between those that were cut. */
export const isPowerReached = ({ cut }: Reach, powerPct: number): boolean =>
  cut.some((spot) => spot.powerPct >= powerPct - samePowerPct) &&
  cut.some((spot) => spot.powerPct <= powerPct + samePowerPct);

/**
 * Whether a setting lies within what was cut: its power between those that were tried, not slower than the slowest, and
 * not faster than what came out at that power or a lower one in as many passes. What lies outside is a guess.
 */
export const isReached = (reach: Reach, { powerPct, speedMmPerS, passes }: Spot): boolean =>
  isPowerReached(reach, powerPct) &&
  reach.cut.some((spot) => spot.speedMmPerS <= speedMmPerS + 1e-9) &&
  reach.out.some(
    (spot) =>
      spot.powerPct <= powerPct + samePowerPct &&
      spot.passes <= passes &&
      spot.speedMmPerS >= speedMmPerS - 1e-9,
  );
