import { cardParts } from '../../src/core/card/cardParts.ts';
import type { Card } from '../../src/core/card/card.ts';
import type { Polyline } from '../../src/core/path/polyline.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';

export const pxPerMm = 16;

/** What a place of the card is. */
export const kind = { outside: 0, surface: 1, mark: 2, groove: 3, slit: 4, hole: 5, piece: 16 };

/** The card from one side as a raster, y upwards from its lower left corner; from behind, mirrored left to right. */
export interface CardRaster {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly places: Uint8Array;
  /** How much lighter each piece is than the card, by how it is tilted. */
  readonly shades: readonly number[];
}

export interface RasterTask {
  readonly card: Card;
  readonly grades: ReadonlyMap<string, Grade>;
  readonly side: 'front' | 'back';
  readonly kerfMm: number;
  readonly seed: number;
}

export const cardRaster = ({ card, grades, side, kerfMm, seed }: RasterTask): CardRaster => {
  const random = seededRandom(seed);
  const [widthPx, heightPx] = [
    Math.ceil(card.widthMm * pxPerMm),
    Math.ceil(card.heightMm * pxPerMm),
  ];
  const places = new Uint8Array(widthPx * heightPx).fill(kind.surface);
  const parts = cardParts(card);
  const raster = { widthPx, heightPx, places };
  if (side === 'front')
    for (const line of parts.marks.flatMap(({ polylines }) => polylines))
      stroke(raster, line, 0.25, kind.mark);
  for (const { polylines } of parts.window)
    for (const line of polylines) fill(raster, line, kind.hole);
  const shades = card.cells.map((): number => 0);
  const shapes = parts.rungs.flat();
  for (const { of, polylines } of shapes) {
    const id = 'cell' in of ? of.cell : '';
    const i = card.cells.findIndex((cell) => cell.id === id);
    const [outline] = polylines;
    if (outline === undefined) continue;
    const grade = grades.get(id) ?? 'stays';
    if (grade === 'out') {
      fill(raster, outline, kind.hole);
      stroke(raster, outline, kerfMm, kind.hole);
    } else if (grade === 'stays') {
      fill(raster, outline, kind.piece + i);
      if (side === 'front') stroke(raster, outline, kerfMm, kind.groove);
      else
        for (const bit of bitsOf(outline, random, { share: 0.4 * random.uniform(), bits: 3 }))
          stroke(raster, bit, kerfMm * 0.6, kind.groove);
    } else {
      const isFlush = random.uniform() < 0.3;
      const [dx, dy] = isFlush ? [0, 0] : [0.25 * random.normal(), 0.25 * random.normal()];
      shades[i] = isFlush ? 0 : 0.16 * random.normal();
      fill(raster, outline, kind.slit);
      stroke(raster, outline, kerfMm, kind.slit);
      fill(
        raster,
        outline.map(([x, y]): [number, number] => [x + dx, y + dy]),
        kind.piece + i,
        kerfMm / 2,
      );
      // What still holds it.
      for (const bit of bitsOf(outline, random, { share: 0.06, bits: 1 + random.integer(3) }))
        stroke(raster, bit, kerfMm, kind.groove);
    }
  }
  if (side === 'back') mirror(raster);
  return { ...raster, shades };
};

interface Sheet {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly places: Uint8Array;
}

/** Pieces of a line that together are a share of it. */
const bitsOf = (
  line: Polyline,
  random: SeededRandom,
  { share, bits }: { readonly share: number; readonly bits: number },
): readonly Polyline[] => {
  const dense = densely(line);
  const length = Math.max(2, Math.round((share * dense.length) / bits));
  return Array.from({ length: bits }, () => {
    const from = random.integer(dense.length);
    return Array.from({ length }, (_, k) => dense[(from + k) % dense.length] ?? [0, 0]);
  });
};

const densely = (line: Polyline): Polyline =>
  line.slice(1).flatMap(([x, y], i) => {
    const [x0, y0] = line[i] ?? [x, y];
    const steps = Math.max(1, Math.ceil(Math.hypot(x - x0, y - y0) * pxPerMm * 0.7));
    return Array.from({ length: steps }, (_, k): [number, number] => [
      x0 + ((x - x0) * k) / steps,
      y0 + ((y - y0) * k) / steps,
    ]);
  });

const stroke = (
  { widthPx, heightPx, places }: Sheet,
  line: Polyline,
  wideMm: number,
  as: number,
): void => {
  const radius = (wideMm * pxPerMm) / 2;
  const reach = Math.ceil(radius);
  for (const [x, y] of densely(line)) {
    const [cx, cy] = [x * pxPerMm, y * pxPerMm];
    for (let j = Math.floor(cy) - reach; j <= cy + reach; j += 1)
      for (let i = Math.floor(cx) - reach; i <= cx + reach; i += 1)
        if (
          i >= 0 &&
          j >= 0 &&
          i < widthPx &&
          j < heightPx &&
          Math.hypot(i + 0.5 - cx, j + 0.5 - cy) <= radius
        )
          places[j * widthPx + i] = as;
  }
};

/** Fills a closed line, kept off its edge. */
const fill = (
  { widthPx, heightPx, places }: Sheet,
  line: Polyline,
  as: number,
  offEdgeMm = 0,
): void => {
  for (let j = 0; j < heightPx; j += 1) {
    const y = (j + 0.5) / pxPerMm;
    const crossings: number[] = [];
    line.slice(1).forEach(([x1, y1], i) => {
      const [x0, y0] = line[i] ?? [x1, y1];
      if (y0 > y !== y1 > y) crossings.push(x0 + ((y - y0) / (y1 - y0)) * (x1 - x0));
    });
    crossings.sort((a, b) => a - b);
    for (let k = 0; k + 1 < crossings.length; k += 2) {
      const from = Math.ceil(((crossings[k] ?? NaN) + offEdgeMm) * pxPerMm - 0.5);
      const to = Math.floor(((crossings[k + 1] ?? NaN) - offEdgeMm) * pxPerMm - 0.5);
      for (let i = Math.max(0, from); i <= Math.min(widthPx - 1, to); i += 1)
        places[j * widthPx + i] = as;
    }
  }
};

const mirror = ({ widthPx, heightPx, places }: Sheet): void => {
  for (let j = 0; j < heightPx; j += 1) places.subarray(j * widthPx, (j + 1) * widthPx).reverse();
};
