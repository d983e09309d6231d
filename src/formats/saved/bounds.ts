import { z } from 'zod';

/**
 * Bounds of what is worth storing. Wide enough for any laser that cuts sheet, narrow enough that a slip of a unit or a
 * stuck key is refused at the border. Common practice, no source.
 */
export const bounds = {
  speedMmPerS: [0.05, 5000],
  thicknessMm: [0.01, 200],
  lengthMm: [0.1, 100_000],
  currentMa: [0, 500],
  ratedCurrentMa: [0.1, 500],
  accelerationMmPerS2: [1, 1_000_000],
  /** A jump of one axis at a corner, and the speed where a power ramp starts. */
  jumpMmPerS: [0, 5000],
  deviationMm: [0, 50],
  /** Of strip, block and nozzle on a focus ramp. */
  rampMm: [0, 2000],
  bedGapMm: [0, 1000],
  nominalW: [5, 1000],
  airKPa: [0, 2000],
  waterC: [0, 90],
  passes: [1, 50],
  count: [0, 10_000_000],
} as const;

export const between = ([least, most]: readonly [number, number]) =>
  z.number().min(least).max(most);

/** A setting in per cent of the scale that is sent to the machine. */
export const pct = z.number().min(0).max(100);
export const speedMmPerS = between(bounds.speedMmPerS);
export const thicknessMm = between(bounds.thicknessMm);
export const lengthMm = between(bounds.lengthMm);
export const currentMa = between(bounds.currentMa);
export const nominalW = between(bounds.nominalW);
export const waterC = between(bounds.waterC);
export const passes = between(bounds.passes).int();
export const count = between(bounds.count).int();

/** A name or label in one line: no control characters, at most 120 characters. */
export const label = z
  .string()
  .trim()
  .min(1)
  .max(120)
  .regex(/^[^\p{Cc}]*$/u, 'no control characters');

/** Free words, several lines allowed. */
export const note = z.string().max(4000);

/** Made where the thing was made, so that sending it twice stores it once. */
export const id = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'letters, digits, - and _, at most 64');

/** Four capital letters or digits, as cut into a card or printed on a shelf label. */
export const code = z.string().regex(/^[A-Z0-9]{4}$/, 'four capital letters or digits');

/** ISO 8601 in UTC, as `2031-04-05T06:07:08.900Z`. */
export const isoTime = z.iso.datetime();
