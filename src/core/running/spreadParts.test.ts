import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { middlesOf, spreadParts } from './spreadParts.ts';

const grid = Array.from({ length: 30 }, (_, i): readonly [number, number] => [
  40 * (i % 6),
  40 * Math.floor(i / 6),
]);

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

  it('are as many as asked for, as far as there are, each once', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            fc.double({ min: 0, max: 500, noNaN: true }),
            fc.double({ min: 0, max: 500, noNaN: true }),
          ),
          { maxLength: 20 },
        ),
        fc.nat(25),
        (middles, count) => {
          const chosen = spreadParts(middles, count);
          // Parts that lie on one another cannot be told apart.
          const places = new Set(middles.map((at) => at.join(' '))).size;
          expect(new Set(chosen).size).toBeLessThanOrEqual(Math.min(count, middles.length));
          expect(chosen.length).toBe(Math.min(count, middles.length));
          expect(new Set(chosen).size).toBeGreaterThanOrEqual(Math.min(count, places));
        },
      ),
    );
  });

  it('are found by the middle of their outlines', () => {
    expect(middlesOf({ parts: [[0, 0, 10, 0, 10, 20, 0, 20]] })).toEqual([[5, 10]]);
  });
});
