import { keepsBounds, type Bounds } from './bounds.ts';
import type { PlanTable, TrialSheet } from './playOut.ts';
import { meanOver } from './pricedSpeed.ts';

/** Main settings that are weighed, in steps of the grid from the best: a sheet that teaches more may be worth its price. */
const besideBest = [-6, -3, 3, 6, 9] as const;

/** A few parts of a sheet at faster settings: steps of the grid beyond the main one, and how many parts. */
const faster = [
  [{ by: 5, parts: 4 }],
  [{ by: 8, parts: 3 }],
  [{ by: 12, parts: 3 }],
  [
    { by: 6, parts: 3 },
    { by: 12, parts: 2 },
  ],
] as const;

export interface SheetNow {
  /** The grid's index of the setting that the plan would go on with by itself. */
  readonly usual: number;
  readonly parts: number;
  /** Parts that are still wanted. */
  readonly left: number;
  readonly bounds: Bounds;
}

/** Sheets that may be cut next beside the usual one. The sheet as a whole keeps the bounds; for a promise each setting does. */
export const trialSheets = (
  table: PlanTable,
  weights: Float64Array,
  { usual, parts, left, bounds }: SheetNow,
): readonly TrialSheet[] => {
  const { grid, wish } = table;
  const last = grid.speeds.length - 1;
  const within = (index: number): boolean =>
    index >= 0 && index <= last && keepsBounds(weights, grid.priced(index), bounds);
  const single = besideBest
    .map((by) => usual + by)
    .filter(within)
    .map((index): TrialSheet => ({ act: 'sheet', settings: [{ index, parts }] }));
  if (wish.wish === 'promise' || left <= parts) return single;
  const mixed = faster.flatMap((groups): readonly TrialSheet[] => {
    const others = groups.map(({ by, parts: some }) => ({ index: usual + by, parts: some }));
    const main = parts - others.reduce((sum, { parts: some }) => sum + some, 0);
    const settings = [{ index: usual, parts: main }, ...others];
    if (main < parts / 2 || settings.some(({ index }) => index > last)) return [];
    const fast = grid.priced(settings.at(-1)?.index ?? usual);
    if (fast.speedMmPerS > bounds.fastestMmPerS) return [];
    const share = settings.reduce(
      (sum, { index, parts: some }) =>
        sum + (some / parts) * meanOver(weights, grid.priced(index).outShare),
      0,
    );
    return share >= bounds.share ? [{ act: 'sheet', settings }] : [];
  });
  return [...single, ...mixed];
};
