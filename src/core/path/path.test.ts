import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { arcPoints } from './arc.ts';
import { boxAround, gapBetween, liesWithin } from './box.ts';
import { isSimple } from '../../../test/reference/crossing.ts';
import { distanceMm, type Point } from './point.ts';
import { closed, isClosed, lengthMm, placed, signedAreaMm2 } from './polyline.ts';

const square: readonly Point[] = closed([
  [0, 0],
  [3, 0],
  [3, 4],
  [0, 4],
]);

describe('a line of points', () => {
  it('has the length, area and box of the 3 by 4 rectangle (Euclid)', () => {
    expect(lengthMm(square)).toBe(14);
    expect(signedAreaMm2(square)).toBe(12);
    expect(signedAreaMm2([...square].reverse())).toBe(-12);
    expect(boxAround([square])).toEqual({ leftMm: 0, bottomMm: 0, rightMm: 3, topMm: 4 });
    expect(boxAround([[]])).toBeUndefined();
  });

  it('knows whether it closes', () => {
    expect(isClosed(square)).toBe(true);
    expect(isClosed(square.slice(0, 4))).toBe(false);
  });

  it('grows in length as it is scaled, wherever it is put', () => {
    const number = fc.double({ min: -50, max: 50, noNaN: true });
    const scale = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(number, number, scale, (x, y, k) => {
        expect(lengthMm(placed(square, [x, y], k))).toBeCloseTo(14 * k, 8);
      }),
    );
  });
});

describe('an arc in chords', () => {
  it('never strays from the circle by more than the tolerance, nor off its length by more than 1 %', () => {
    const radius = fc.double({ min: 0.5, max: 200, noNaN: true });
    const turn = fc.double({ min: -6.28, max: 6.28, noNaN: true });
    fc.assert(
      fc.property(radius, turn, (radiusMm, turnRad) => {
        const points = arcPoints({ centre: [1, 2], radiusMm, fromRad: 0.3, turnRad }, 0.01);
        for (const [i, to] of points.entries()) {
          const from = points[i - 1] ?? to;
          const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
          const strays = radiusMm - distanceMm(middle, [1, 2]);
          expect(Math.abs(strays)).toBeLessThanOrEqual(0.01 + 1e-9);
        }
        const length = Math.abs(radiusMm * turnRad);
        expect(Math.abs(lengthMm(points) - length)).toBeLessThanOrEqual(0.01 * length + 1e-9);
      }),
    );
  });
});

describe('a line that crosses itself', () => {
  it('is told from one that does not', () => {
    expect(isSimple(square)).toBe(true);
    const bow: readonly Point[] = [
      [0, 0],
      [3, 4],
      [3, 0],
      [0, 4],
      [0, 0],
    ];
    expect(isSimple(bow)).toBe(false);
    const touching: readonly Point[] = [
      [0, 0],
      [4, 0],
      [4, 2],
      [2, 0],
    ];
    expect(isSimple(touching)).toBe(false);
  });
});

describe('boxes', () => {
  it('tell how far they stand apart', () => {
    const at = (x: number, y: number) => ({
      leftMm: x,
      bottomMm: y,
      rightMm: x + 2,
      topMm: y + 2,
    });
    expect(gapBetween(at(0, 0), at(5, 1))).toBe(3);
    expect(gapBetween(at(0, 0), at(1, 1))).toBe(-1);
    expect(liesWithin(at(1, 1), { leftMm: 0, bottomMm: 0, rightMm: 3, topMm: 3 })).toBe(true);
    expect(liesWithin(at(2, 1), { leftMm: 0, bottomMm: 0, rightMm: 3, topMm: 3 })).toBe(false);
  });
});
