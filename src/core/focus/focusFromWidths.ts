import { fQuantile, tQuantile } from '../../num/distributions.ts';
import { done, refused, type Outcome, type ProblemOf } from '../problem.ts';
import { fitLineWidths, rayleighBand, type LineWidth } from './fitLineWidths.ts';
import type { FocusCode } from '../problems/focus.ts';
import { gapAtMm, sineOf, type FocusRamp } from './focusRamp.ts';
import type { FocusEstimate, FocusReadings, Interval } from './focusTest.ts';

type Widths = Extract<FocusReadings, { kind: 'widths' }>['widths'];

/** Three or four parameters are fitted, and the scatter must still be told. */
const leastWidths = 6;
/** A bound farther out than this from the best value says as little as none. */
const widestRatio = 4;

/**
 * The focus from the width of a line at places along it: where the fitted line is narrowest, with Student's interval.
 * Refuses too few widths, widths that show no narrowest place (`focus-widths-level`), and a focus that lies beyond the
 * readings (`focus-beyond-high-end`, `focus-beyond-low-end`): then the ramp missed it. ~60 ms for 12 widths.
 */
export const focusFromWidths = (ramp: FocusRamp, widths: Widths): Outcome<FocusEstimate> => {
  const off = widths.find(
    ({ alongMm, widthMm }) => !(alongMm >= 0 && alongMm <= ramp.lengthMm && widthMm > 0),
  );
  if (off !== undefined)
    return refused('focus-reading-off-strip', { alongMm: off.alongMm, lengthMm: ramp.lengthMm });
  const places = new Set(widths.map(({ alongMm }) => alongMm)).size;
  if (places < leastWidths) return refused('focus-readings-too-few');
  const sine = sineOf(ramp);
  const heights = widths.map(({ alongMm, widthMm }) => ({ atMm: sine * alongMm, widthMm }));
  const fit = fitLineWidths(heights);
  if (fit === null || !(betterThanLevel(heights, fit.rss, fit.degrees) < 0.05))
    return refused('focus-widths-level');
  const alongs = widths.map(({ alongMm }) => alongMm);
  const [first, last] = [Math.min(...alongs), Math.max(...alongs)];
  const value = fit.model.focusMm / sine;
  if (value > last) return refused('focus-beyond-high-end', { alongMm: Math.round(last) });
  if (value < first) return refused('focus-beyond-low-end', { alongMm: Math.round(first) });
  const reach = (tQuantile(0.975, fit.degrees) * fit.focusSdMm) / sine;
  const rayleighMm = rayleighOf(heights, fit);
  return done({
    alongMm: { value, low: value - reach, high: value + reach },
    gapMm: {
      value: gapAtMm(ramp, value),
      low: gapAtMm(ramp, value + reach),
      high: gapAtMm(ramp, value - reach),
    },
    rayleighMm,
    remarks: remarksOn(
      { value, low: value - reach, high: value + reach },
      { first, last, depthKnown: rayleighMm !== null },
    ),
  });
};

/** The chance that widths which do not change at all would be fitted this much better by a focus than by one width. */
const betterThanLevel = (widths: readonly LineWidth[], rss: number, degrees: number): number => {
  const logs = widths.map(({ widthMm }) => Math.log(widthMm));
  const mean = logs.reduce((sum, value) => sum + value, 0) / logs.length;
  const level = logs.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const more = widths.length - 1 - degrees;
  const betterment = (level - rss) / more / (rss / degrees);
  // Only on which side of one in twenty it lies is asked.
  return betterment > fQuantile(0.95, more, degrees) ? 0 : 1;
};

const rayleighOf = (
  heights: readonly LineWidth[],
  fit: NonNullable<ReturnType<typeof fitLineWidths>>,
): Interval | null => {
  const value = fit.model.rayleighMm;
  const [low, high] = rayleighBand(heights, fit);
  return low > value / widestRatio && high < value * widestRatio ? { value, low, high } : null;
};

const remarksOn = (
  along: Interval,
  { first, last, depthKnown }: { first: number; last: number; depthKnown: boolean },
): readonly ProblemOf<FocusCode>[] => [
  ...(along.high > last ? [{ code: 'focus-near-high-end' as const, params: {} }] : []),
  ...(along.low < first ? [{ code: 'focus-near-low-end' as const, params: {} }] : []),
  ...(depthKnown ? [] : [{ code: 'focus-depth-unknown' as const, params: {} }]),
];
