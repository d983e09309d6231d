import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { closed, lengthMm, signedAreaMm2, type Polyline } from '../path/polyline.ts';
import type { Point } from '../path/point.ts';
import { partsOf } from '../proof/partsOf.ts';
import { grownParts, type GrownParts } from './grownParts.ts';

const box = (x: number, y: number, width: number, height: number): Polyline =>
  closed([
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]);
const ring = (at: Point, radius: number, count: number): Polyline =>
  closed(
    Array.from({ length: count }, (_, i): Point => {
      const angle = (2 * Math.PI * i) / count;
      return [at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)];
    }),
  );
const grown = (lines: readonly Polyline[], byMm: number): GrownParts =>
  grownParts(partsOf(lines), byMm);
const areas = ({ parts }: GrownParts): readonly number[] =>
  parts.flatMap(({ lines }) => lines.map(({ points }) => Math.abs(signedAreaMm2(points))));

describe('parts moved out by half the kerf', () => {
  it('grow their outline and shrink their holes, however either was drawn', () => {
    // A plate of 40 × 30 with a hole of 10 × 10, kerf 0.2: 40.2 × 30.2 and 9.8 × 9.8.
    const hole = box(15, 10, 10, 10);
    for (const drawnHole of [hole, hole.toReversed()]) {
      for (const plate of [box(0, 0, 40, 30), box(0, 0, 40, 30).toReversed()]) {
        const [inner, outer] = areas(grown([plate, drawnHole], 0.1));
        expect(inner).toBeCloseTo(9.8 * 9.8, 6);
        expect(outer).toBeCloseTo(40.2 * 30.2, 6);
      }
    }
  });

  it('take an island in a hole for a part of its own', () => {
    const lines = [box(0, 0, 40, 40), box(10, 10, 20, 20), box(15, 15, 10, 10)];
    const { parts, meet } = grown(lines, 0.1);
    expect(parts).toHaveLength(2);
    expect(meet).toBe(false);
    const island = parts.find(({ lines: own }) => own.some(({ outline }) => outline === 2));
    expect(Math.abs(signedAreaMm2(island?.lines[0]?.points ?? []))).toBeCloseTo(10.2 * 10.2, 6);
  });

  it('come out as drawn when the beam takes its half away again: exact area of any convex shape with sharp corners', () => {
    // Moving each edge of a convex polygon out by d adds P·d + d²·Σ tan(half the turn at each corner): elementary geometry.
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 60 }),
        fc.double({ min: 5, max: 80, noNaN: true }),
        fc.double({ min: 0.01, max: 0.3, noNaN: true }),
        (count, radius, byMm) => {
          const shape = ring([100, 100], radius, count);
          const [area = NaN] = areas(grown([shape], byMm));
          const corners = count * Math.tan(Math.PI / count) * byMm * byMm;
          const exact = signedAreaMm2(shape) + lengthMm(shape) * byMm + corners;
          expect(Math.abs(area - exact)).toBeLessThan(lengthMm(shape) * 2e-4);
        },
      ),
    );
  });

  it('name a hole that closes, and a gap between two edges that fills', () => {
    const closing = grown([box(0, 0, 20, 20), box(5, 5, 0.15, 8)], 0.1);
    expect(closing.parts[0]?.lost).toEqual([{ what: 'hole', at: [5.075, 9] }]);
    expect(closing.parts[0]?.lines).toHaveLength(1);
    // A comb with a slit of 0.15 mm from the edge, 10 mm deep.
    const slit: Polyline = closed([
      [0, 0],
      [20, 0],
      [20, 20],
      [10.15, 20],
      [10.15, 10],
      [10, 10],
      [10, 20],
      [0, 20],
    ]);
    const filling = grown([slit], 0.1);
    expect(filling.parts[0]?.lost.map(({ what }) => what)).toEqual(['gap']);
    expect(filling.parts[0]?.lost[0]?.at[0]).toBeCloseTo(10.075, 3);
    expect(grown([slit], 0.05).parts[0]?.lost).toEqual([]);
  });

  it('say when parts run into one another', () => {
    const apart = [box(0, 0, 10, 10), box(10.3, 0, 10, 10)];
    expect(grown(apart, 0.1).meet).toBe(false);
    expect(grown(apart, 0.2).meet).toBe(true);
    // One line between both, drawn once for each.
    expect(grown([box(0, 0, 10, 10), box(10, 0, 10, 10)], 0.1).meet).toBe(true);
    // An island that nearly fills its hole; a ring alone is not near itself.
    const island = [box(0, 0, 30, 30), box(10, 10, 10, 10), box(10.1, 10.1, 9.8, 9.8)];
    expect(grown(island, 0.1).meet).toBe(true);
    expect(grown(island.slice(0, 2), 0.1).meet).toBe(false);
  });
});
