import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import { partsOf } from './partsOf.ts';
import { partsApart, spreadParts } from './spreadParts.ts';

const grid = Array.from({ length: 30 }, (_, i): Point => [40 * (i % 6), 40 * Math.floor(i / 6)]);

const square = (x: number, y: number, half: number): Polyline => [
  [x - half, y - half],
  [x + half, y - half],
  [x + half, y + half],
  [x - half, y + half],
  [x - half, y - half],
];

describe('parts for a setting of their own', () => {
  it('lie apart: of six among thirty in rows no two side by side', () => {
    const chosen = spreadParts(grid, 6);
    expect(chosen).toHaveLength(6);
    for (const a of chosen)
      for (const b of chosen) {
        if (a === b) continue;
        const [x, y] = grid[a] ?? [0, 0];
        const [u, v] = grid[b] ?? [0, 0];
        expect(Math.hypot(x - u, y - v)).toBeGreaterThan(45);
      }
  });

  it('are as many as asked for, as far as there are, each once; fewer are the beginning of more', () => {
    const mm = fc.double({ min: 0, max: 500, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(mm, mm), { maxLength: 20 }), fc.nat(25), (middles, count) => {
        const chosen = spreadParts(middles, count);
        expect(chosen).toHaveLength(Math.min(count, middles.length));
        expect(new Set(chosen).size).toBe(chosen.length);
        expect(spreadParts(middles, count + 3).slice(0, chosen.length)).toEqual(chosen);
      }),
    );
  });

  it('are none that lie within another part or hold one: those have to be cut in an order', () => {
    const apart = partsApart(
      partsOf([
        ...[square(0, 0, 50), square(0, 0, 40), square(0, 0, 5)],
        ...[square(200, 0, 10), square(300, 0, 10), square(300, 0, 3)],
      ]),
    );
    const middles = apart.length;
    expect(middles).toBe(2);
  });
});
