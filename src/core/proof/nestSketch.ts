import type { Polyline } from '../path/polyline.ts';
import type { NestSketch } from '../study/startedOrder.ts';
import { partsApart } from './spreadParts.ts';
import type { DrawingInParts } from './partsOf.ts';

/** Points of one outline in a sketch: enough to know a part by on a phone. */
const mostPoints = 60;

/** The parts of a drawing as a picture to tap on, in the order in which the drawing has them. Undefined: it has none. O(points). */
export const nestSketch = (drawing: DrawingInParts): NestSketch | undefined => {
  const { parts, outlines } = drawing;
  const outer = parts.flatMap(({ outlines: [first] }) => {
    const points = first === undefined ? undefined : outlines[first]?.points;
    return points === undefined ? [] : [points];
  });
  if (outer.length === 0) return undefined;
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const points of outer)
    for (const [x, y] of points) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      bottom = Math.min(bottom, y);
      top = Math.max(top, y);
    }
  return {
    widthMm: Math.max(0.1, tenth(right - left)),
    heightMm: Math.max(0.1, tenth(top - bottom)),
    apart: partsApart(drawing),
    parts: outer.map((points) =>
      thinned(points).flatMap(([x, y]) => [tenth(x - left), tenth(top - y)]),
    ),
  };
};

const tenth = (mm: number): number => Math.round(10 * mm) / 10;

const thinned = (points: Polyline): Polyline => {
  const every = Math.ceil(points.length / mostPoints);
  return points.filter((_, i) => i % every === 0);
};
