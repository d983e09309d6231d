import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import { hersheyGlyphs } from './hersheyGlyphs.ts';

/** How a text is written: its capitals' height in mm, and how far the letters are narrowed (1: not at all). */
export interface Lettering {
  readonly capMm: number;
  readonly narrow?: number;
}

/** Units of the table from the base line to the top of a capital, and where these lie. */
const capUnits = 21;
const baseLineY = 22;
/** How far the deepest stroke (of `/`, `p`, `y`) hangs below the base line, and how far `/` rises above the capitals; in cap heights. */
export const deepestPerCap = 7 / capUnits;
export const highestPerCap = 4 / capUnits;

interface Glyph {
  readonly advance: number;
  readonly strokes: readonly (readonly Point[])[];
}

const read = (advance: number, strokes: string): Glyph => ({
  advance,
  strokes: strokes
    .split(';')
    .filter((stroke) => stroke !== '')
    .map((stroke) => stroke.split(' ').map(pointOf)),
});

const pointOf = (pair: string): Point => {
  const [x = 0, y = 0] = pair.split(',').map(Number);
  return [x, y];
};

const glyphs: ReadonlyMap<string, Glyph> = new Map(
  Object.entries(hersheyGlyphs).map(([sign, [advance, strokes]]) => [sign, read(advance, strokes)]),
);

/** Signs that have no glyph are written as `?`, so that they are seen to be missing. */
const glyphOf = (sign: string): Glyph =>
  glyphs.get(sign) ?? glyphs.get('?') ?? { advance: 14, strokes: [] };

/** Whether every sign of a text can be written by the laser. */
export const canBeWritten = (text: string): boolean =>
  Array.from(text).every((sign) => glyphs.has(sign));

/** Width of a text in mm, from the start of its first letter's room to the end of its last one's. */
export const textWidthMm = (text: string, { capMm, narrow = 1 }: Lettering): number =>
  Array.from(text).reduce((sum, sign) => sum + glyphOf(sign).advance, 0) *
  (capMm / capUnits) *
  narrow;

/**
 * A text as single strokes that a laser can draw in one line each; `at` is the start of the base line, in mm, y
 * upwards.
 */
export const writeText = (text: string, at: Point, lettering: Lettering): readonly Polyline[] => {
  const { capMm, narrow = 1 } = lettering;
  const unit = capMm / capUnits;
  let advanceMm = 0;
  return Array.from(text).flatMap((sign) => {
    const glyph = glyphOf(sign);
    const startMm = at[0] + advanceMm;
    advanceMm += glyph.advance * unit * narrow;
    return glyph.strokes.map((stroke) =>
      stroke.map(([x, y]): Point => [startMm + x * unit * narrow, at[1] + (baseLineY - y) * unit]),
    );
  });
};
