import { distanceMm, type Point } from './point.ts';

/** Points joined by straight lines, in mm. A closed one repeats its first point as its last. */
export type Polyline = readonly Point[];

/** Two neighbours at a time, first to last. */
export const segmentsOf = (line: Polyline): readonly (readonly [from: Point, to: Point])[] =>
  line.flatMap((to, i): (readonly [Point, Point])[] => {
    const from = i > 0 ? line[i - 1] : undefined;
    return from === undefined ? [] : [[from, to]];
  });

/** Length along the line, in mm. Makes nothing on the way: drawings have millions of points. */
export const lengthMm = (line: Polyline): number => {
  let sum = 0;
  for (let i = 1; i < line.length; i += 1) {
    const [from, to] = [line[i - 1], line[i]];
    if (from !== undefined && to !== undefined) sum += distanceMm(from, to);
  }
  return sum;
};

/** Scales about the origin, then moves. */
export const placed = (line: Polyline, at: Point, scale = 1): Polyline =>
  line.map(([x, y]) => [at[0] + x * scale, at[1] + y * scale]);

/** Joins the last point to the first. */
export const closed = (line: Polyline): Polyline => {
  const first = line[0];
  return first === undefined ? line : [...line, first];
};

/** True where the line ends where it began, to a micrometre. */
export const isClosed = (line: Polyline): boolean => {
  const first = line[0];
  const last = line.at(-1);
  return (
    first !== undefined && last !== undefined && line.length > 2 && distanceMm(first, last) < 1e-3
  );
};

/** Area within a closed line, in mm²; positive where it runs anticlockwise (y up). The shoelace formula. */
export const signedAreaMm2 = (line: Polyline): number => {
  let sum = 0;
  for (let i = 1; i < line.length; i += 1) {
    const [from, to] = [line[i - 1], line[i]];
    if (from !== undefined && to !== undefined) sum += (from[0] * to[1] - to[0] * from[1]) / 2;
  }
  return sum;
};
