import { wordLettering } from '../../src/core/card/lettering.ts';
import { textWidthMm, writeText } from '../../src/core/card/letters.ts';
import type { Point } from '../../src/core/path/point.ts';
import type { Polyline } from '../../src/core/path/polyline.ts';

/** The signs that may stand beside a cell. */
const alphabet = Array.from('0123456789./%cmsinoxarABCDEFGHIJKLMNOPQRSTUVWXYZ').map((sign) => ({
  sign,
  strokes: writeText(sign, [0, 0], wordLettering),
  widthMm: textWidthMm(sign, wordLettering),
}));
const spaceMm = textWidthMm(' ', wordLettering);
/** No line of words has more signs, spaces included. */
const mostSigns = 40;

const sameMm = 0.01;

const at = (strokes: readonly Polyline[], [dx, dy]: Point): readonly Polyline[] =>
  strokes.map((stroke) => stroke.map(([x, y]): Point => [x + dx, y + dy]));

const same = (a: Polyline, b: Polyline): boolean =>
  a.length === b.length &&
  a.every(
    ([x, y], i) => Math.hypot(x - (b[i]?.[0] ?? Infinity), y - (b[i]?.[1] ?? Infinity)) < sameMm,
  );

const leftOf = (stroke: Polyline): number => Math.min(...stroke.map(([x]) => x));

/**
 * Reads one line of engraved words sign by sign, as somebody would who knows the alphabet and not the card: which sign has
 * all its strokes at the next place, the richest first. Undefined where strokes are left over.
 */
export const readLine = (strokes: readonly Polyline[]): string | undefined => {
  const [first] = strokes.toSorted((a, b) => leftOf(a) - leftOf(b));
  if (first === undefined) return '';
  for (const letter of alphabet) {
    for (const own of letter.strokes) {
      const [from, to] = [own[0], first[0]];
      if (from === undefined || to === undefined) continue;
      const origin: Point = [to[0] - from[0], to[1] - from[1]];
      if (!isThere(letter.strokes, origin, strokes)) continue;
      const read = readFrom(origin, strokes);
      if (read !== undefined) return read;
    }
  }
  return undefined;
};

const isThere = (wanted: readonly Polyline[], origin: Point, there: readonly Polyline[]): boolean =>
  at(wanted, origin).every((stroke) => there.some((other) => same(stroke, other)));

const readFrom = (origin: Point, strokes: readonly Polyline[]): string | undefined => {
  let left = strokes;
  let [x] = origin;
  const [, y] = origin;
  let text = '';
  while (left.length > 0 && text.length < mostSigns) {
    const [best] = alphabet
      .filter(({ strokes: wanted }) => isThere(wanted, [x, y], left))
      .toSorted((a, b) => sizeOf(b.strokes) - sizeOf(a.strokes));
    if (best === undefined) {
      text += ' ';
      x += spaceMm;
      continue;
    }
    const its = at(best.strokes, [x, y]);
    left = left.filter((stroke) => !its.some((own) => same(own, stroke)));
    text += best.sign;
    x += best.widthMm;
  }
  return left.length === 0 ? text : undefined;
};

const sizeOf = (strokes: readonly Polyline[]): number =>
  strokes.reduce((sum, stroke) => sum + stroke.length, 0);

/** The two lines below a cell, the upper first: they are parted by the widest gap in height. */
export const readWords = (strokes: readonly Polyline[]): readonly (string | undefined)[] => {
  const middles = strokes
    .map((stroke) => ({ stroke, low: Math.min(...stroke.map(([, y]) => y)) }))
    .toSorted((a, b) => b.low - a.low);
  let [split, widest] = [middles.length, 0];
  middles.forEach(({ low }, i) => {
    const above = middles
      .slice(0, i)
      .reduce((least, other) => Math.min(least, other.low), Infinity);
    const top = middles
      .slice(i)
      .reduce((most, { stroke }) => Math.max(most, ...stroke.map(([, y]) => y)), -Infinity);
    const gap = above - top;
    if (i > 0 && gap > widest && Number.isFinite(low)) [split, widest] = [i, gap];
  });
  return [middles.slice(0, split), middles.slice(split)].map((line) =>
    readLine(line.map(({ stroke }) => stroke)),
  );
};
