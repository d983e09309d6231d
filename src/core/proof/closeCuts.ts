import type { Point } from '../path/point.ts';
import { distanceMm } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import { segmentGrid } from '../path/segmentGrid.ts';

/** Cuts that come nearer to one another than the sheet is thick. */
export interface CloseCuts {
  /** How many pairs of lines. */
  readonly pairs: number;
  readonly leastMm: number;
  /** In the middle of the narrowest bridge. */
  readonly at: Point;
}

/** Lines that touch have no bridge between them. */
const touchMm = 0.05;

/**
 * Pairs of lines with a bridge between them narrower than `widthMm`; undefined: none. Lines that touch or cross are left
 * out. Near linear, by a grid of segments.
 */
export const closeCuts = (lines: readonly Polyline[], widthMm: number): CloseCuts | undefined => {
  const grid = segmentGrid(lines, Math.max(1, widthMm));
  const { ends, owner } = grid;
  const nearest = new Map<number, { gapMm: number; at: Point }>();
  grid.eachPair(widthMm, (i, j) => {
    const [a, b] = [owner[i] ?? 0, owner[j] ?? 0];
    if (a === b) return;
    const key = Math.max(a, b) * lines.length + Math.min(a, b);
    const known = nearest.get(key);
    if (known !== undefined && known.gapMm <= touchMm) return;
    const bridge = bridgeBetween(ends, i, j);
    if (bridge.gapMm < Math.min(widthMm, known?.gapMm ?? Infinity)) nearest.set(key, bridge);
  });
  const bridges = [...nearest.values()].filter(({ gapMm }) => gapMm > touchMm);
  const narrowest = bridges.reduce<{ gapMm: number; at: Point } | undefined>(
    (least, bridge) => (least !== undefined && least.gapMm <= bridge.gapMm ? least : bridge),
    undefined,
  );
  return narrowest === undefined
    ? undefined
    : { pairs: bridges.length, leastMm: narrowest.gapMm, at: narrowest.at };
};

/** The shortest way between two segments: it begins or ends at one of their ends, unless they cross. */
const bridgeBetween = (
  ends: Float64Array,
  i: number,
  j: number,
): { readonly gapMm: number; readonly at: Point } => {
  if (crossing(ends, i, j)) return { gapMm: 0, at: [ends[4 * i] ?? 0, ends[4 * i + 1] ?? 0] };
  let best: { gapMm: number; at: Point } = { gapMm: Infinity, at: [0, 0] };
  for (const [segment, other] of [
    [i, j],
    [j, i],
  ] as const) {
    for (const k of [4 * other, 4 * other + 2]) {
      const point: Point = [ends[k] ?? 0, ends[k + 1] ?? 0];
      const foot = footOn(ends, segment, point);
      const gapMm = distanceMm(point, foot);
      if (gapMm < best.gapMm) {
        best = { gapMm, at: [(point[0] + foot[0]) / 2, (point[1] + foot[1]) / 2] };
      }
    }
  }
  return best;
};

const footOn = (ends: Float64Array, i: number, [x, y]: Point): Point => {
  const [x0, y0] = [ends[4 * i] ?? 0, ends[4 * i + 1] ?? 0];
  const [dx, dy] = [(ends[4 * i + 2] ?? 0) - x0, (ends[4 * i + 3] ?? 0) - y0];
  const share = ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy || 1);
  const held = Math.min(1, Math.max(0, share));
  return [x0 + held * dx, y0 + held * dy];
};

const crossing = (ends: Float64Array, i: number, j: number): boolean =>
  parts(ends, i, j) && parts(ends, j, i);

/** True where the two ends of segment j lie on either side of segment i. */
const parts = (ends: Float64Array, i: number, j: number): boolean => {
  const [x0, y0] = [ends[4 * i] ?? 0, ends[4 * i + 1] ?? 0];
  const [dx, dy] = [(ends[4 * i + 2] ?? 0) - x0, (ends[4 * i + 3] ?? 0) - y0];
  const side = (k: number): number => dx * ((ends[k + 1] ?? 0) - y0) - dy * ((ends[k] ?? 0) - x0);
  return side(4 * j) * side(4 * j + 2) < 0;
};
