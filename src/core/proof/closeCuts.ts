import { drawnOnce } from '../path/drawnOnce.ts';
import { eachNearPiece, piecesOf, type Pieces } from '../path/nearPieces.ts';
import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import { segmentCells } from '../path/segmentCells.ts';
import { segmentGrid } from '../path/segmentGrid.ts';
import { segmentGapMm, shortestBridge } from './segmentGap.ts';

/** Cuts that come nearer to one another than the sheet is thick. */
export interface CloseCuts {
  /** How many pairs of lines. */
  readonly pairs: number;
  readonly leastMm: number;
  /** In the middle of the narrowest bridge. */
  readonly at: Point;
  /** Too many lie near one another to look at them all: there may be more. */
  readonly isPart: boolean;
}

/** Pairs of segments that are compared, and pairs of lines that touch, at most: some seconds, some tens of MB. */
const mostCompared = 15_000_000;
const mostPairs = 500_000;

/** Lines that touch have no bridge between them. */
const touchMm = 0.05;

/**
 * Pairs of lines with a bridge between them narrower than `widthMm`; undefined: none. Lines that touch or cross are left
 * out. Near linear: of a pair no more is reckoned than whether it is near enough, unless it may be the narrowest.
 */
export const closeCuts = (drawn: readonly Polyline[], widthMm: number): CloseCuts | undefined => {
  const lines = drawnOnce(drawn).first.map((i) => drawn[i] ?? []);
  if (lines.length < 2) return undefined;
  const grid = segmentCells(lines, Math.max(1, widthMm));
  const { ends, owner } = grid;
  const pieces = piecesOf(grid);
  const keyOf = (a: number, b: number): number => Math.max(a, b) * lines.length + Math.min(a, b);
  const { touching, isWhole } = touchingPairs(lines, keyOf);
  let left = mostCompared;
  const near = new Set<number>();
  let leastMm = widthMm;
  let narrowest: readonly [i: number, j: number] | undefined;
  eachNearPiece(grid, pieces, widthMm, (p, q) => {
    if (left < 0 || near.size >= mostPairs) return false;
    // Pieces of one line too: a line that goes over itself again and again has millions of pairs.
    left -= 1;
    const [a, b] = [owner[pieces.first[p] ?? NaN] ?? NaN, owner[pieces.first[q] ?? NaN] ?? NaN];
    if (a === b) return true;
    const key = keyOf(a, b);
    const known = near.has(key);
    const apartMm = boxesApartMm(pieces.boxes, p, q);
    if (apartMm >= (known ? leastMm : widthMm) || touching.has(key)) return true;
    // One that cannot be the narrowest is only asked whether it is near enough.
    const enoughMm = apartMm >= leastMm ? widthMm : 0;
    const found = leastGap(ends, pieces, [p, q], known ? leastMm : widthMm, enoughMm);
    left -= found.compared;
    if (found.gap === undefined || found.gap.gapMm <= touchMm) return true;
    near.add(key);
    const { gapMm, i, j } = found.gap;
    if (gapMm < leastMm) [leastMm, narrowest] = [gapMm, [i, j]];
    return true;
  });
  if (narrowest === undefined) return undefined;
  const isPart = left < 0 || near.size >= mostPairs || !isWhole;
  return { pairs: near.size, leastMm, at: shortestBridge(ends, ...narrowest).at, isPart };
};

/** Whether any two of these lines touch, cross, or come nearer to one another than so much. */
export const anyNear = (lines: readonly Polyline[], widthMm: number): boolean =>
  touchingPairs(lines, (a, b) => Math.max(a, b) * lines.length + Math.min(a, b)).touching.size >
    0 || closeCuts(lines, widthMm) !== undefined;

/** Pairs of lines that touch or cross. */
const touchingPairs = (
  lines: readonly Polyline[],
  keyOf: (a: number, b: number) => number,
): { readonly touching: ReadonlySet<number>; readonly isWhole: boolean } => {
  const { ends, owner, eachPair } = segmentGrid(lines, 1);
  const touching = new Set<number>();
  const isWhole = eachPair(touchMm, (i, j) => {
    const [a, b] = [owner[i] ?? NaN, owner[j] ?? NaN];
    if (a !== b && touching.size < mostPairs && segmentGapMm(ends, i, j) <= touchMm)
      touching.add(keyOf(a, b));
  });
  return { touching, isWhole: isWhole && touching.size < mostPairs };
};

const boxesApartMm = (boxes: Float64Array, p: number, q: number): number => {
  const side = (of: number, k: number): number => boxes[4 * of + k] ?? NaN;
  const across = Math.max(0, side(p, 0) - side(q, 2), side(q, 0) - side(p, 2));
  const up = Math.max(0, side(p, 1) - side(q, 3), side(q, 1) - side(p, 3));
  return Math.sqrt(across * across + up * up);
};

interface Gap {
  readonly gapMm: number;
  readonly i: number;
  readonly j: number;
}

/** The least gap between two pieces below `mostMm`, or the first below `enoughMm`; undefined: none. */
const leastGap = (
  ends: Float64Array,
  pieces: Pieces,
  [p, q]: readonly [number, number],
  mostMm: number,
  enoughMm: number,
): { readonly gap: Gap | undefined; readonly compared: number } => {
  const ours = segmentsNear(ends, pieces, p, q, mostMm);
  const theirs = segmentsNear(ends, pieces, q, p, mostMm);
  let least: Gap | undefined;
  let leastMm = mostMm;
  let compared = ours.length + theirs.length + 1;
  for (const i of ours) {
    for (const j of theirs) {
      compared += 1;
      const gapMm = segmentGapMm(ends, i, j);
      if (gapMm >= leastMm) continue;
      least = { gapMm, i, j };
      if (gapMm < enoughMm) return { gap: least, compared };
      leastMm = gapMm;
    }
  }
  return { gap: least, compared };
};

/** Segments of one piece whose boxes come so near to the box of the other. */
const segmentsNear = (
  ends: Float64Array,
  { first, boxes }: Pieces,
  p: number,
  other: number,
  reachMm: number,
): readonly number[] => {
  const [left, bottom] = [
    (boxes[4 * other] ?? NaN) - reachMm,
    (boxes[4 * other + 1] ?? NaN) - reachMm,
  ];
  const [right, top] = [
    (boxes[4 * other + 2] ?? NaN) + reachMm,
    (boxes[4 * other + 3] ?? NaN) + reachMm,
  ];
  const near: number[] = [];
  for (let i = first[p] ?? NaN; i < (first[p + 1] ?? NaN); i += 1) {
    const [x0, y0] = [ends[4 * i] ?? NaN, ends[4 * i + 1] ?? NaN];
    const [x1, y1] = [ends[4 * i + 2] ?? NaN, ends[4 * i + 3] ?? NaN];
    if ((x0 < left && x1 < left) || (x0 > right && x1 > right)) continue;
    if ((y0 < bottom && y1 < bottom) || (y0 > top && y1 > top)) continue;
    near.push(i);
  }
  return near;
};
