import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawnOnce } from './drawnOnce.ts';
import type { Polyline } from './polyline.ts';

describe('lines drawn again', () => {
  it('are found whichever way they run, and nothing else is', () => {
    const line: Polyline = [
      [0, 0],
      [3, 4],
      [7, 1],
    ];
    const other: Polyline = [
      [0, 0],
      [7, 1],
      [3, 4],
    ];
    const { first, sameAs } = drawnOnce([line, other, [...line].reverse(), line, []]);
    expect(first).toEqual([0, 1, 4]);
    expect([...sameAs]).toEqual([0, 1, 0, 0, 4]);
  });

  it('are as many as a comparison of all with all finds', () => {
    const coordinate = fc.integer({ min: 0, max: 2 });
    const lines = fc.array(fc.array(fc.tuple(coordinate, coordinate), { maxLength: 3 }), {
      maxLength: 40,
    });
    fc.assert(
      fc.property(lines, (drawn) => {
        const keyOf = (line: Polyline): string =>
          [JSON.stringify(line), JSON.stringify([...line].reverse())].sort()[0] ?? '';
        expect(drawnOnce(drawn).first).toHaveLength(new Set(drawn.map(keyOf)).size);
      }),
    );
  });

  it('may be a hundred thousand in one place', () => {
    const lines = Array.from({ length: 100_000 }, (): Polyline => [
      [10, 10],
      [200, 10],
    ]);
    expect(drawnOnce(lines).first).toEqual([0]);
  });
});
