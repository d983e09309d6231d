import { z } from 'zod';
import { bounds, labelChars, noteChars } from './limits.ts';

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

/** A name or label in one line: no control characters, at most {@link labelChars} characters. */
export const label = z
  .string()
  .trim()
  .min(1)
  .max(labelChars)
  .regex(/^[^\p{Cc}]*$/u, 'no control characters');

/** Free words, several lines allowed. */
export const note = z.string().max(noteChars);

/** Made where the thing was made, so that sending it twice stores it once. */
export const id = z.string().regex(/^[A-Za-z0-9_-]{1,64}$/, 'letters, digits, - and _, at most 64');

/** Four capital letters or digits, as cut into a card or printed on a shelf label. */
export const code = z.string().regex(/^[A-Z0-9]{4}$/, 'four capital letters or digits');

/** ISO 8601 in UTC, as `2031-04-05T06:07:08.900Z`. */
export const isoTime = z.iso.datetime();

/** Who said it; absent: nobody gave a name. */
export const authorShape = { by: label.exactOptional() };
