import { done, refused, type Outcome } from '../problem.ts';
import type { Interval } from './focusTest.ts';

/** Where a sheet is to lie to the focus, and what the beam looks like in it then. */
export interface FocusAdvice {
  /**
   * `surface`: the focus on the sheet's top; the whole sheet lies within the depth of focus. `into`: half-way into the
   * sheet, which then lies within it. `too-thick`: half-way in is still the best, but no height serves the whole sheet.
   */
  readonly place: 'surface' | 'into' | 'too-thick';
  /** How far below the sheet's top the focus is to lie, mm. */
  readonly intoMm: number;
  /** The gap between nozzle and sheet that puts it there, mm. */
  readonly gapMm: number;
  /** How many times its narrowest the beam is at its widest inside the sheet: so set, and with the focus on the top. */
  readonly widest: number;
  readonly widestFromSurface: number;
}

/** Nearer than this the nozzle would touch what stands up from the sheet, mm. Common practice, no source. */
const leastGapMm = 1.5;

/**
 * "At the surface or into the sheet?" By geometry alone: the beam is w0·√(1 + (z/zR)²) wide, so a sheet no thicker than
 * zR lies within the depth of focus from its top, one up to 2·zR only with the focus half-way in. Refuses a nozzle that
 * would come too near (`focus-gap-too-small`).
 */
export const focusAdvice = (given: {
  readonly gapMm: number;
  readonly rayleighMm: number;
  readonly thicknessMm: number;
}): Outcome<FocusAdvice> => {
  const { gapMm, rayleighMm, thicknessMm } = given;
  const place =
    thicknessMm <= rayleighMm ? 'surface' : thicknessMm <= 2 * rayleighMm ? 'into' : 'too-thick';
  const intoMm = place === 'surface' ? 0 : thicknessMm / 2;
  if (gapMm - intoMm < leastGapMm)
    return refused('focus-gap-too-small', {
      gapMm: Number((gapMm - intoMm).toFixed(1)),
      leastMm: leastGapMm,
    });
  const widestAt = (awayMm: number): number => Math.hypot(1, awayMm / rayleighMm);
  return done({
    place,
    intoMm,
    gapMm: gapMm - intoMm,
    widest: widestAt(Math.max(intoMm, thicknessMm - intoMm)),
    widestFromSurface: widestAt(thicknessMm),
  });
};

/**
 * The thickest sheet that one height surely serves, mm: within it, wherever the focus really is, the beam's area is
 * nowhere more than doubled. The depth of focus at its lower bound, less what is not known of the focus, to both sides.
 */
export const servedThicknessMm = (rayleighMm: Interval, gapMm: Interval): number =>
  Math.max(0, 2 * rayleighMm.low - (gapMm.high - gapMm.low));

/** How a fixed gauge stands to the focus that was found. */
export interface GaugeCheck {
  /** `fits`: within what is known. `near`: off by less than a quarter of the depth of focus. `off`: by more. */
  readonly verdict: 'fits' | 'near' | 'off';
  /** Gauge less gap, mm: above 0 the gauge holds the nozzle too far away. */
  readonly byMm: number;
}

/** Without a depth of focus a gauge is called near within this, mm. Common practice, no source. */
const nearWithoutDepthMm = 0.5;

/** Checks the gauge that a workshop sets its height by. */
export const checkGauge = (
  gaugeMm: number,
  gapMm: Interval,
  rayleighMm: Interval | null,
): GaugeCheck => {
  const byMm = gaugeMm - gapMm.value;
  const near = rayleighMm === null ? nearWithoutDepthMm : rayleighMm.value / 2;
  if (gaugeMm >= gapMm.low && gaugeMm <= gapMm.high) return { verdict: 'fits', byMm };
  return { verdict: Math.abs(byMm) <= near ? 'near' : 'off', byMm };
};
