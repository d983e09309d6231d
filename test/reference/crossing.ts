import { isClosed, segmentsOf, type Polyline } from '../../src/core/path/polyline.ts';
import type { Point } from '../../src/core/path/point.ts';

/**
 * True where no part of the line touches another part, save neighbours at their common point and the two ends of a
 * closed line. O(n²) in the number of segments: for shapes of some hundred points.
 */
export const isSimple = (line: Polyline): boolean => {
  const segments = segmentsOf(line);
  const loops = isClosed(line);
  return segments.every((a, i) =>
    segments.every((b, j) => {
      const neighbours = j === i + 1 || (loops && i === 0 && j === segments.length - 1);
      return j <= i || neighbours || !segmentsTouch(a, b);
    }),
  );
};

type Segment = readonly [Point, Point];

const segmentsTouch = ([a, b]: Segment, [c, d]: Segment): boolean => {
  const turns = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)] as const;
  if (turns[0] * turns[1] < 0 && turns[2] * turns[3] < 0) return true;
  return (
    (turns[0] === 0 && isBetween(a, b, c)) ||
    (turns[1] === 0 && isBetween(a, b, d)) ||
    (turns[2] === 0 && isBetween(c, d, a)) ||
    (turns[3] === 0 && isBetween(c, d, b))
  );
};

/** Which way a, b, c turns: 1 left, −1 right, 0 straight on. */
const turn = (a: Point, b: Point, c: Point): number => {
  const cross = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  return Math.abs(cross) < 1e-12 ? 0 : Math.sign(cross);
};

const isBetween = (a: Point, b: Point, c: Point): boolean =>
  Math.min(a[0], b[0]) <= c[0] &&
  c[0] <= Math.max(a[0], b[0]) &&
  Math.min(a[1], b[1]) <= c[1] &&
  c[1] <= Math.max(a[1], b[1]);
