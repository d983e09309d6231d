import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { insideTest } from '../path/insideTest.ts';
import { closed } from '../path/polyline.ts';
import type { Point } from '../path/point.ts';
import { areaOf, quadsIn, type Quad } from './quads.ts';

const size = { widthPx: 300, heightPx: 220 };

/** A turned rectangle of pixels around the middle, with a disc over its first corner. */
const painted = (turnRad: number, [width, height]: Point, discPx = 0) => {
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  const corner = (x: number, y: number): Point => [
    150 + (x * width * cos) / 2 - (y * height * sin) / 2,
    110 + (x * width * sin) / 2 + (y * height * cos) / 2,
  ];
  const corners: Quad = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
  const inside = insideTest(closed([...corners]));
  const mask = Uint8Array.from({ length: size.widthPx * size.heightPx }, (_, k) => {
    const at: Point = [(k % size.widthPx) + 0.5, Math.floor(k / size.widthPx) + 0.5];
    return inside(at) || Math.hypot(at[0] - corners[0][0], at[1] - corners[0][1]) < discPx ? 1 : 0;
  });
  return { corners, mask };
};

const farthestCorner = (quad: Quad, corners: Quad): number =>
  Math.max(...corners.map(([x, y]) => Math.min(...quad.map(([u, v]) => Math.hypot(x - u, y - v)))));

describe('four-sided things in a mask', () => {
  it('are found at every turn, to a pixel or two', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 7, noNaN: true }),
        fc.double({ min: 60, max: 120, noNaN: true }),
        (turn, width) => {
          const { corners, mask } = painted(turn, [width, 0.7 * width]);
          const [best] = quadsIn(mask, size);
          expect(best?.support).toBeGreaterThan(0.9);
          expect(
            farthestCorner(
              best?.quad ?? [
                [0, 0],
                [0, 0],
                [0, 0],
                [0, 0],
              ],
              corners,
            ),
          ).toBeLessThan(3);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('keep the corner that something lies over', () => {
    for (const turn of [0.2, 0.9, 1.7, 2.6]) {
      const { corners, mask } = painted(turn, [130, 90], 17);
      const found = quadsIn(mask, size);
      expect(Math.min(...found.map(({ quad }) => farthestCorner(quad, corners)))).toBeLessThan(4);
    }
  });

  it('are none in what is empty, full, or too small', () => {
    expect(quadsIn(new Uint8Array(size.widthPx * size.heightPx), size)).toEqual([]);
    expect(quadsIn(new Uint8Array(size.widthPx * size.heightPx).fill(1), size)).toEqual([]);
    expect(quadsIn(painted(0.3, [20, 14]).mask, size)).toEqual([]);
  });

  it('have the area of what was painted', () => {
    const { corners } = painted(0.4, [100, 50]);
    expect(areaOf(corners)).toBeCloseTo(5000, 6);
  });
});
