import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { seededRandom } from '../../num/seededRandom.ts';
import { closed, placed, type Polyline } from '../path/polyline.ts';
import { partsOf } from './partsOf.ts';

const box = (x: number, y: number, width: number, height = width): Polyline =>
  closed([
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]);

const ring = (x: number, y: number, radius: number, points = 24): Polyline =>
  closed(
    Array.from({ length: points }, (_, i) => [
      x + radius * Math.cos((2 * Math.PI * i) / points),
      y + radius * Math.sin((2 * Math.PI * i) / points),
    ]),
  );

describe('a drawing in parts', () => {
  it('gives each outline its holes, by the even-odd rule; an island in a hole is a part of its own', () => {
    const { parts, open } = partsOf([
      box(40, 10, 10),
      box(0, 0, 100),
      box(10, 10, 20),
      box(15, 15, 5),
      [
        [200, 0],
        [210, 0],
      ],
    ]);
    const [frame, island] = [...parts].sort((a, b) => b.cutMm - a.cutMm);
    expect([...(frame?.lines ?? [])].sort()).toEqual([0, 1, 2]);
    expect(frame?.outlines[0]).toBe(1);
    expect(island?.lines).toEqual([3]);
    expect(parts.map(({ cutMm }) => cutMm).sort((a, b) => b - a)).toEqual([520, 20]);
    expect(open.map(({ lines }) => lines)).toEqual([[4]]);
  });

  it('takes an outline in pieces for one, whatever their order and direction', () => {
    const [a, b, c, d] = [
      [0, 0],
      [30, 0],
      [30, 40],
      [0, 40.01],
    ] as const;
    const { parts, open } = partsOf([[a, b], [d, c], [b, c], [d, a], box(5, 5, 4)]);
    expect(open).toEqual([]);
    expect(parts).toHaveLength(1);
    expect([...(parts[0]?.lines ?? [])].sort()).toEqual([0, 1, 2, 3, 4]);
    expect(parts[0]?.cutMm).toBeCloseTo(156, 1);
  });

  it('leaves ends apart where three meet', () => {
    const star: Polyline[] = [
      [
        [0, 0],
        [10, 0],
      ],
      [
        [0, 0],
        [0, 10],
      ],
      [
        [0, 0],
        [-10, 0],
      ],
    ];
    expect(partsOf(star).open).toHaveLength(3);
  });

  it('counts an outline that is drawn twice once', () => {
    const twice = [box(0, 0, 30), box(10, 10, 5), [...box(0, 0, 30)].reverse(), box(10, 10.01, 5)];
    const { parts } = partsOf(twice);
    expect(parts.map(({ outlines }) => outlines.length)).toEqual([2]);
  });

  it('finds the same parts wherever the sheet lies and in whatever order it is drawn', () => {
    const random = fc.integer({ min: 1, max: 1e6 });
    const turn = fc.double({ min: 0, max: 6.3, noNaN: true });
    fc.assert(
      fc.property(random, turn, (seed, angle) => {
        const next = seededRandom(seed);
        const drawn = Array.from({ length: 12 }, (_, i) => {
          const [x, y] = [40 * (i % 4), 40 * Math.floor(i / 4)];
          const holes = next.integer(3);
          return [
            ring(x, y, 18),
            ...Array.from({ length: holes }, (__, k) => ring(x - 8 + 8 * k, y, 3)),
            ...(holes > 0 ? [ring(x - 8, y, 1)] : []),
          ];
        });
        const lines = drawn.flat();
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const moved = lines.map((line) =>
          placed(
            line.map(([x, y]) => [c * x - s * y, s * x + c * y]),
            [3, -70],
          ),
        );
        const sizes = (found: readonly Polyline[]): string =>
          partsOf(found)
            .parts.map(({ outlines, cutMm }) => `${String(outlines.length)} ${cutMm.toFixed(2)}`)
            .sort()
            .join();
        expect(partsOf(lines).parts).toHaveLength(12 + drawn.filter((d) => d.length > 1).length);
        expect(sizes(moved)).toBe(sizes(lines));
        expect(sizes([...lines].reverse())).toBe(sizes(lines));
      }),
      { numRuns: 30 },
    );
  });

  it('groups 20 000 outlines on one sheet in a moment', () => {
    const lines = [
      ring(500, 500, 900, 5000),
      ...Array.from({ length: 10_000 }, (_, i) => {
        const [x, y] = [10 * (i % 100), 10 * Math.floor(i / 100)];
        return [ring(x, y, 4), ring(x, y, 2)];
      }).flat(),
    ];
    const { parts } = partsOf(lines);
    // The sheet's own rim has the 10 000 outlines for holes; each of their holes is then a part.
    expect(parts).toHaveLength(10_001);
  }, 15_000);
});
