import type { Problem } from '../problem.ts';
import type { StockCode } from './codes.ts';

/** Where on the sheet a reading was taken, seen from the front of the machine: the eight points of EN 324-1. */
export type Place =
  'front-left' | 'front' | 'front-right' | 'right' | 'back-right' | 'back' | 'back-left' | 'left';

export interface PlacedReading {
  readonly place: Place;
  readonly thicknessMm: number;
}

/** Less than this a workshop caliper cannot tell from nothing. Common practice, no source. */
const leastDifferenceMm = 0.1;
const leastDifferencePct = 3;

/** Whether the sheet is thicker on one side than on the other, and by how much; nothing when it is not, or not known. */
export const wedgeHint = (readings: readonly PlacedReading[]): Problem | undefined => {
  const mean = (side: string): number | undefined => {
    const there = readings.filter(({ place }) => place.split('-').includes(side));
    return there.length === 0
      ? undefined
      : there.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0) / there.length;
  };
  const steepest = [
    ['left', 'right'],
    ['right', 'left'],
    ['front', 'back'],
    ['back', 'front'],
  ]
    .map(([thick = '', thin = '']) => ({ thick, thin, thickMm: mean(thick), thinMm: mean(thin) }))
    .flatMap(({ thick, thin, thickMm, thinMm }) =>
      thickMm === undefined || thinMm === undefined
        ? []
        : [{ thick, thin, thickMm, thinMm, differenceMm: thickMm - thinMm }],
    )
    .sort((a, b) => b.differenceMm - a.differenceMm)[0];
  if (steepest === undefined) return undefined;
  const { thick, thin, thickMm, thinMm, differenceMm } = steepest;
  if (differenceMm < leastDifferenceMm || differenceMm < (leastDifferencePct / 100) * thinMm)
    return undefined;
  const code: StockCode = 'thickness-wedge';
  return {
    code,
    params: { thick, thin, thickMm: Number(thickMm.toFixed(2)), thinMm: Number(thinMm.toFixed(2)) },
  };
};
