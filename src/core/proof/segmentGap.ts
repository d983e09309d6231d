import { distanceMm, type Point } from '../path/point.ts';

/**
 * How far two segments stand apart, in mm; 0 where they cross. `ends`: x0, y0, x1, y1 of each. The shortest way begins or
 * ends at one of their ends, unless they cross. Allocates nothing: it is asked for millions of pairs. O(1).
 */
export const segmentGapMm = (ends: Float64Array, i: number, j: number): number =>
  crossing(ends, i, j)
    ? 0
    : Math.sqrt(
        Math.min(
          squareToSegment(ends, i, 4 * j),
          squareToSegment(ends, i, 4 * j + 2),
          squareToSegment(ends, j, 4 * i),
          squareToSegment(ends, j, 4 * i + 2),
        ),
      );

/** The square of the distance from a point, by where its x stands, to a segment. */
const squareToSegment = (ends: Float64Array, i: number, point: number): number => {
  const [x0, y0] = [ends[4 * i] ?? NaN, ends[4 * i + 1] ?? NaN];
  const [dx, dy] = [(ends[4 * i + 2] ?? NaN) - x0, (ends[4 * i + 3] ?? NaN) - y0];
  const [x, y] = [(ends[point] ?? NaN) - x0, (ends[point + 1] ?? NaN) - y0];
  const share = (x * dx + y * dy) / (dx * dx + dy * dy || 1);
  const held = Math.min(1, Math.max(0, share));
  const [offX, offY] = [x - held * dx, y - held * dy];
  return offX * offX + offY * offY;
};

/** The shortest way between two segments that do not cross, and its middle. */
export const shortestBridge = (
  ends: Float64Array,
  i: number,
  j: number,
): { readonly gapMm: number; readonly at: Point } => {
  let best: { gapMm: number; at: Point } = { gapMm: Infinity, at: [0, 0] };
  for (const [segment, other] of [
    [i, j],
    [j, i],
  ] as const) {
    for (const k of [4 * other, 4 * other + 2]) {
      const point: Point = [ends[k] ?? NaN, ends[k + 1] ?? NaN];
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
  const [x0, y0] = [ends[4 * i] ?? NaN, ends[4 * i + 1] ?? NaN];
  const [dx, dy] = [(ends[4 * i + 2] ?? NaN) - x0, (ends[4 * i + 3] ?? NaN) - y0];
  const share = ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy || 1);
  const held = Math.min(1, Math.max(0, share));
  return [x0 + held * dx, y0 + held * dy];
};

const crossing = (ends: Float64Array, i: number, j: number): boolean =>
  parts(ends, i, j) && parts(ends, j, i);

/** True where the two ends of segment j lie on either side of segment i. */
const parts = (ends: Float64Array, i: number, j: number): boolean => {
  const [x0, y0] = [ends[4 * i] ?? NaN, ends[4 * i + 1] ?? NaN];
  const [dx, dy] = [(ends[4 * i + 2] ?? NaN) - x0, (ends[4 * i + 3] ?? NaN) - y0];
  const atFirst = dx * ((ends[4 * j + 1] ?? NaN) - y0) - dy * ((ends[4 * j] ?? NaN) - x0);
  const atLast = dx * ((ends[4 * j + 3] ?? NaN) - y0) - dy * ((ends[4 * j + 2] ?? NaN) - x0);
  return atFirst * atLast < 0;
};
