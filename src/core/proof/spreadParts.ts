import type { Point } from '../path/point.ts';
import { distanceMm } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import type { DrawingInParts } from './partsOf.ts';

/** Parts that get a setting of their own: no sheet has more of them. */
const mostApart = 200;

/**
 * The parts of a drawing in the order in which they are taken for a setting of their own, the first of them far from one
 * another. Those that lie within another part, or hold another, are left out: they have to be cut in an order. Places in the
 * drawing's parts. O(parts · 200).
 */
export const partsApart = ({ parts, outlines }: DrawingInParts): readonly number[] => {
  const nestedOf = (outline: number | undefined) => outlines[outline ?? -1]?.nested;
  const holdsAnother = new Set(
    parts.map(({ outlines: [outer] }) => nestedOf(nestedOf(outer)?.within)?.within),
  );
  const free = parts.flatMap(({ outlines: [outer] }, i) =>
    nestedOf(outer)?.depth === 0 && !holdsAnother.has(outer) ? [i] : [],
  );
  const middles = free.map((i) => middleOf(outlines[parts[i]?.outlines[0] ?? -1]?.points ?? []));
  return spreadParts(middles, mostApart).flatMap((k) => free[k] ?? []);
};

/** The middle of an outline, in mm. */
const middleOf = (points: Polyline): Point => {
  const [x, y] = points.reduce<Point>(([u, v], [px, py]) => [u + px, v + py], [0, 0]);
  return [x / points.length, y / points.length];
};

/**
 * So many places far from one another, so that heat and a bad place on the board do not pose as the setting: the first is the
 * one nearest to the middle of all, each next the one farthest from all before (Gonzalez 1985, Theor. Comput. Sci. 38:293).
 * Fewer are the beginning of more. O(count · places).
 */
export const spreadParts = (middles: readonly Point[], count: number): readonly number[] => {
  const wanted = Math.min(count, middles.length);
  const centre = middleOf(middles);
  const distance = middles.map(() => Infinity);
  const chosen: number[] = [];
  let next = indexOfLeast(middles.map((at) => distanceMm(at, centre)));
  while (chosen.length < wanted) {
    const from = middles[next];
    if (from === undefined) break;
    chosen.push(next);
    middles.forEach((at, i) => {
      distance[i] = i === next ? -1 : Math.min(distance[i] ?? -1, distanceMm(at, from));
    });
    next = indexOfLeast(distance.map((one) => -one));
  }
  return chosen;
};

const indexOfLeast = (values: readonly number[]): number =>
  values.reduce((best, value, i) => (value < (values[best] ?? Infinity) ? i : best), 0);
