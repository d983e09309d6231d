import type { Point } from './point.ts';
import type { Polyline } from './polyline.ts';

/** Lines of fewer segments are gone through from end to end. */
const fewSegments = 48;

/**
 * Tells of any point whether a closed line goes round it, by the even-odd rule. Long lines are sorted into level bands
 * first, so that many points may be asked about: O(segments) once, then about O(√segments) each.
 */
export const insideTest = (line: Polyline): ((point: Point) => boolean) => {
  const count = Math.max(0, line.length - 1);
  if (count < fewSegments) {
    const all = Uint32Array.from({ length: count }, (_, i) => i);
    return (point) => isInside(line, all, point);
  }
  let [low, high] = [Infinity, -Infinity];
  for (const [, y] of line) [low, high] = [Math.min(low, y), Math.max(high, y)];
  const bands = Math.ceil(count / 8);
  const bandOf = (y: number): number =>
    Math.min(bands - 1, Math.max(0, Math.floor((bands * (y - low)) / (high - low || 1))));
  const segments: number[][] = Array.from({ length: bands }, () => []);
  for (let i = 0; i < count; i += 1) {
    const [from, to] = [bandOf(line[i]?.[1] ?? NaN), bandOf(line[i + 1]?.[1] ?? NaN)];
    for (let band = Math.min(from, to); band <= Math.max(from, to); band += 1)
      segments[band]?.push(i);
  }
  return (point) => isInside(line, segments[bandOf(point[1])] ?? [], point);
};

/** Counts the segments that a level ray to the right crosses. */
const isInside = (line: Polyline, among: ArrayLike<number>, [x, y]: Point): boolean => {
  let inside = false;
  for (let k = 0; k < among.length; k += 1) {
    const i = among[k] ?? NaN;
    const [x0, y0] = line[i] ?? [0, 0];
    const [x1, y1] = line[i + 1] ?? [0, 0];
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
  }
  return inside;
};
