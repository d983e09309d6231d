import { describe, expect, it } from 'vitest';
import { project } from '../../num/homography.ts';
import type { Point } from '../path/point.ts';
import { waysToLie } from './placeCard.ts';
import type { Quad } from './quads.ts';

const card = { widthMm: 120, heightMm: 80 };
const quad: Quad = [
  [100, 80],
  [500, 110],
  [480, 400],
  [90, 370],
];
const corners: readonly Point[] = [
  [0, 0],
  [120, 0],
  [120, 80],
  [0, 80],
];
/** Positive where three points turn with the clock on a picture whose y points down. */
const turning = (points: readonly Point[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [x1, y1] = points[(i + 1) % points.length] ?? [x, y];
    return sum + x * y1 - x1 * y;
  }, 0);

describe('the ways in which a card may lie', () => {
  it.each(['front', 'back'] as const)('%s: four, each corner on a corner', (side) => {
    const ways = waysToLie(card, quad, side);
    const onto = ways.map((toPx) => corners.map((corner) => project(toPx, corner)));
    expect(new Set(onto.map(([first]) => first?.map(Math.round).join())).size).toBe(4);
    for (const points of onto)
      for (const [x, y] of points)
        expect(Math.min(...quad.map(([u, v]) => Math.hypot(x - u, y - v)))).toBeLessThan(1e-6);
    // A card with y up, seen from its front, turns against the clock on the picture; from behind, with it.
    for (const points of onto) expect(turning(points) < 0).toBe(side === 'front');
  });

  it('do not hang on how the quad is told', () => {
    const [a, b, c, d] = quad;
    const told = (of: Quad): string[] =>
      waysToLie(card, of, 'front')
        .map((toPx) =>
          project(toPx, [10, 10])
            .map((value) => value.toFixed(3))
            .join(),
        )
        .sort();
    expect(told([d, c, b, a])).toEqual(told(quad));
    expect(told([c, d, a, b])).toEqual(told(quad));
  });
});
