import { distanceMm, type Point } from '../../core/path/point.ts';
import type { Polyline } from '../../core/path/polyline.ts';

/** Most passes that anybody asks for. */
const mostPasses = 50;

/**
 * A line that goes over itself, taken apart: a loop run through several times, or an open line there and back. O(points)
 * for most lines.
 */
export const unfold = (
  points: Polyline,
): { readonly points: Polyline; readonly passes: number } => {
  const segments = points.length - 1;
  for (let passes = Math.min(mostPasses, segments); passes > 1; passes -= 1) {
    if (segments % passes !== 0) continue;
    const each = segments / passes;
    const once = points.slice(0, each + 1);
    if (repeats(points, once, each)) return { points: once, passes };
  }
  return { points, passes: 1 };
};

const near = (a: Point | undefined, b: Point | undefined): boolean =>
  a !== undefined && b !== undefined && distanceMm(a, b) < 1e-3;

const repeats = (points: Polyline, once: Polyline, each: number): boolean => {
  if (once.length < 2) return false;
  const loops = near(once[0], once.at(-1));
  return points.every((point, i) => {
    const pass = Math.floor(i / each);
    const along = i % each;
    const back = !loops && pass % 2 === 1;
    return (
      near(point, once[back ? each - along : along]) ||
      (along === 0 && near(point, once[back ? each : 0]))
    );
  });
};
