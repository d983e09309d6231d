import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import { drawnOnce } from '../path/drawnOnce.ts';
import { lengthMm as lengthOf } from '../path/polyline.ts';
import { segmentGrid } from '../path/segmentGrid.ts';

/** Cuts that go over one another, whole or in part, in either direction. */
export interface CutTwice {
  /** How much is gone over again: a stretch cut three times counts twice. */
  readonly lengthMm: number;
  readonly at: Point;
  /** Too many lines lie on one heap to look at them all: there may be more. */
  readonly isPart: boolean;
}

/** Lines this near to one another are one cut: a fraction of any kerf. */
export const sameCutMm = 0.02;

/** Shorter overlaps are where lines meet, not cuts made twice. */
const leastOverlapMm = 0.1;

/** Finds what is cut twice; undefined: nothing. Near linear, by a grid of segments; exact copies are counted beforehand. */
export const cutTwice = (lines: readonly Polyline[]): CutTwice | undefined => {
  const { first, sameAs } = drawnOnce(lines);
  const once = first.map((i) => lines[i] ?? []);
  const grid = segmentGrid(once, 1);
  const { ends } = grid;
  let [lengthMm, longest, at]: [number, number, Point] = [0, 0, [0, 0]];
  const found = (length: number, where: () => Point): void => {
    lengthMm += length;
    if (length > longest) [longest, at] = [length, where()];
  };
  sameAs.forEach((same, i) => {
    const line = lines[i] ?? [];
    if (same !== i) found(lengthOf(line), () => middleOf(line[0], line[1]));
  });
  /** The stretches of one segment that earlier ones cover. */
  let stretches: [number, number][] = [];
  let current = -1;
  const count = (): void => {
    if (stretches.length === 0) return;
    const k = 4 * current;
    const [from, to]: [Point, Point] = [
      [ends[k] ?? NaN, ends[k + 1] ?? NaN],
      [ends[k + 2] ?? NaN, ends[k + 3] ?? NaN],
    ];
    found(unionOf(stretches), () => middleOf(from, to));
    stretches = [];
  };
  const isWhole = grid.eachPair(sameCutMm, (i, j) => {
    if (i !== current) {
      count();
      current = i;
    }
    const shared = overlapOf(ends, i, j);
    if (shared !== undefined) stretches.push(shared);
  });
  count();
  return lengthMm >= leastOverlapMm || !isWhole ? { lengthMm, at, isPart: !isWhole } : undefined;
};

const middleOf = ([x0, y0]: Point = [0, 0], [x1, y1]: Point = [x0, y0]): Point => [
  (x0 + x1) / 2,
  (y0 + y1) / 2,
];

/** The stretch of segment i, in mm from its start, along which segment j runs within {@link sameCutMm} of it. */
const overlapOf = (ends: Float64Array, i: number, j: number): [number, number] | undefined => {
  const [x0, y0] = [ends[4 * i] ?? NaN, ends[4 * i + 1] ?? NaN];
  const [dx, dy] = [(ends[4 * i + 2] ?? NaN) - x0, (ends[4 * i + 3] ?? NaN) - y0];
  const length = Math.hypot(dx, dy);
  if (length < 1e-6) return undefined;
  const [ux, uy] = [dx / length, dy / length];
  const along = (k: number): number =>
    ((ends[k] ?? NaN) - x0) * ux + ((ends[k + 1] ?? NaN) - y0) * uy;
  const beside = (k: number): number =>
    ((ends[k + 1] ?? NaN) - y0) * ux - ((ends[k] ?? NaN) - x0) * uy;
  const [a, b] = [along(4 * j), along(4 * j + 2)];
  const [from, to] = [Math.max(0, Math.min(a, b)), Math.min(length, Math.max(a, b))];
  // A sliver of overlap is a corner, or the next chord of the same curve.
  if (to - from <= Math.min(2 * sameCutMm, length / 2)) return undefined;
  const [besideA, besideB] = [beside(4 * j), beside(4 * j + 2)];
  const besideAt = (t: number): number => besideA + ((t - a) / (b - a)) * (besideB - besideA);
  return Math.abs(besideAt(from)) <= sameCutMm && Math.abs(besideAt(to)) <= sameCutMm
    ? [from, to]
    : undefined;
};

const unionOf = (stretches: [number, number][]): number => {
  stretches.sort((a, b) => a[0] - b[0]);
  let [sum, reached] = [0, -Infinity];
  for (const [from, to] of stretches) {
    sum += Math.max(0, to - Math.max(from, reached));
    reached = Math.max(reached, to);
  }
  return sum;
};
