import type { NestSketch } from '../study/startedOrder.ts';

/** The middle of each part of a nest, in mm. */
export const middlesOf = ({
  parts,
}: Pick<NestSketch, 'parts'>): readonly (readonly [number, number])[] =>
  parts.map((outline) => {
    const points = outline.length / 2;
    let [x, y] = [0, 0];
    for (let i = 0; i + 1 < outline.length; i += 2) {
      x += outline[i] ?? 0;
      y += outline[i + 1] ?? 0;
    }
    return [x / points, y / points];
  });

/**
 * Parts of a nest for a setting of their own, far from one another: heat and a bad place on the board then do not pose as the
 * setting. The first is the one nearest to the middle, each next the one farthest from all before (Gonzalez 1985, Theor.
 * Comput. Sci. 38:293). Rising indices. O(count · parts).
 */
export const spreadParts = (
  middles: readonly (readonly [x: number, y: number])[],
  count: number,
): readonly number[] => {
  const wanted = Math.min(count, middles.length);
  if (wanted === 0) return [];
  const mean = [0, 1].map(
    (axis) => middles.reduce((sum, at) => sum + (at[axis] ?? 0), 0) / middles.length,
  );
  const far = ([x, y]: readonly [number, number], [u = 0, v = 0]: readonly number[]): number =>
    Math.hypot(x - u, y - v);
  let next = indexOfLeast(middles.map((at) => far(at, mean)));
  const distance = middles.map(() => Infinity);
  const chosen: number[] = [];
  while (chosen.length < wanted) {
    chosen.push(next);
    const from = middles[next];
    if (from === undefined) break;
    middles.forEach((at, i) => {
      distance[i] = Math.min(distance[i] ?? Infinity, far(at, from));
    });
    next = indexOfLeast(distance.map((one) => -one));
  }
  return chosen.sort((a, b) => a - b);
};

const indexOfLeast = (values: readonly number[]): number =>
  values.reduce((best, value, i) => (value < (values[best] ?? Infinity) ? i : best), 0);
