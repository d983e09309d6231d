import { param } from '../../../test/samples/param.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { seededRandom } from '../../num/seededRandom.ts';
import { closed, placed, type Polyline } from '../path/polyline.ts';
import { closeCuts } from './closeCuts.ts';
import { cutTwice } from './cutTwice.ts';
import { drawingRemarks } from './drawingRemarks.ts';
import { partsOf } from './partsOf.ts';
import { segmentGapMm } from './segmentGap.ts';

const box = (x: number, y: number, size: number): Polyline =>
  closed([
    [x, y],
    [x + size, y],
    [x + size, y + size],
    [x, y + size],
  ]);
const line = (x0: number, y0: number, x1: number, y1: number): Polyline => [
  [x0, y0],
  [x1, y1],
];

const remarksOn = (lines: readonly Polyline[], thicknessMm = 3) =>
  drawingRemarks(lines, partsOf(lines), thicknessMm);

describe('what is cut twice', () => {
  it('is measured whole and in part, whichever way the lines run', () => {
    expect(cutTwice([box(0, 0, 20), box(20.01, 0, 20)])?.lengthMm).toBeCloseTo(20, 1);
    expect(cutTwice([line(0, 0, 30, 0), line(50, 0, 20, 0.01)])?.lengthMm).toBeCloseTo(10, 4);
    expect(cutTwice([box(0, 0, 20), [...box(0, 0, 20)].reverse()])?.lengthMm).toBeCloseTo(80, 6);
    // There and back.
    expect(cutTwice([[...line(0, 0, 30, 0), [5, 0]]])?.lengthMm).toBeCloseTo(25, 6);
    // Three times: gone over again twice.
    expect(
      cutTwice([line(0, 0, 30, 0), line(0, 0, 30, 0), line(30, 0, 0, 0)])?.lengthMm,
    ).toBeCloseTo(60, 6);
  });

  it('is not where lines meet, cross or run beside one another', () => {
    expect(cutTwice([box(0, 0, 20), box(20.05, 0, 20)])).toBeUndefined();
    expect(cutTwice([line(0, 0, 30, 0), line(10, -5, 10, 5), line(30, 0, 60, 0)])).toBeUndefined();
  });

  it('is as long wherever the drawing lies', () => {
    const number = fc.double({ min: -300, max: 300, noNaN: true });
    const turn = fc.double({ min: 0, max: 6.3, noNaN: true });
    const drawn = [box(0, 0, 20), line(3, 0, 45, 0), line(10, 20, 4, 20)];
    fc.assert(
      fc.property(number, number, turn, (x, y, angle) => {
        const [c, s] = [Math.cos(angle), Math.sin(angle)];
        const moved = drawn.map((each) =>
          placed(
            each.map(([u, v]) => [c * u - s * v, s * u + c * v]),
            [x, y],
          ),
        );
        expect(cutTwice(moved)?.lengthMm).toBeCloseTo(17 + 6, 4);
      }),
    );
  });
});

describe('cuts close together', () => {
  it('tells the narrowest bridge and where it is', () => {
    expect(closeCuts([box(0, 0, 20), box(22, 5, 20), box(60, 0, 20)], 3)).toEqual({
      isPart: false,
      pairs: 1,
      leastMm: 2,
      at: [21, 5],
    });
    expect(closeCuts([box(0, 0, 20), box(24, 5, 20)], 3)).toBeUndefined();
    // Touching and crossing lines have no bridge.
    expect(closeCuts([box(0, 0, 20), line(20, 5, 40, 5), line(-5, 8, 5, 8)], 3)).toBeUndefined();
  });

  it('finds the same as comparing every point of every line with every other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const random = seededRandom(seed);
        const lines = Array.from({ length: 7 }, () =>
          placed(box(0, 0, 2 + 8 * random.uniform()), [
            40 * random.uniform(),
            40 * random.uniform(),
          ]),
        );
        const found = closeCuts(lines, 2);
        const points = lines.map((each) =>
          each.slice(1).flatMap(([x1, y1], i) => {
            const [x0, y0] = each[i] ?? [0, 0];
            return Array.from({ length: 60 }, (_, k) => [
              x0 + ((x1 - x0) * k) / 60,
              y0 + ((y1 - y0) * k) / 60,
            ]);
          }),
        );
        const gap = (a: number, b: number): number =>
          Math.min(
            ...(points[a] ?? []).map(([x = 0, y = 0]) =>
              Math.min(...(points[b] ?? []).map(([u = 0, v = 0]) => Math.hypot(u - x, v - y))),
            ),
          );
        const gaps = lines
          .flatMap((_, a) => lines.slice(0, a).map((__, b) => gap(a, b)))
          // Those that nearly touch are told apart by less than the points' own distance.
          .filter((mm) => mm > 0.3 && mm < 2);
        if (found === undefined) expect(gaps).toEqual([]);
        else if (found.leastMm > 0.3) expect(Math.min(...gaps)).toBeCloseTo(found.leastMm, 1);
      }),
      { numRuns: 12 },
    );
  });
});

describe('cuts close together, counted', () => {
  it('are as many and as near as by every segment with every other, with long and crossing lines too', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(0.5, 3, 9), (seed, widthMm) => {
        const random = seededRandom(seed);
        const lines = Array.from({ length: 9 }, (): Polyline => {
          let [x, y, angle] = [30 * random.uniform(), 30 * random.uniform(), 6 * random.uniform()];
          const stepMm = random.uniform() < 0.5 ? 0.3 : 4;
          return Array.from({ length: 2 + random.integer(120) }, () => {
            angle += random.uniform() - 0.5;
            [x, y] = [x + stepMm * Math.cos(angle), y + stepMm * Math.sin(angle)];
            return [x, y] as const;
          });
        });
        const gaps = lines.flatMap((a, n) =>
          lines.slice(0, n).map((b) => {
            const ends = Float64Array.from(
              [a, b].flatMap((each) =>
                each.slice(1).flatMap((to, i) => [...(each[i] ?? to), ...to]),
              ),
            );
            let least = Infinity;
            for (let i = 0; i < a.length - 1; i += 1) {
              for (let j = 0; j < b.length - 1; j += 1)
                least = Math.min(least, segmentGapMm(ends, i, a.length - 1 + j));
            }
            return least;
          }),
        );
        const near = gaps.filter((mm) => mm > 0.05 && mm < widthMm);
        const found = closeCuts(lines, widthMm);
        expect(found?.pairs ?? 0).toBe(near.length);
        if (found !== undefined) expect(found.leastMm).toBeCloseTo(Math.min(...near), 9);
      }),
      { numRuns: 40 },
    );
  });

  it('stand as far apart as geometry says', () => {
    const gap = (...ends: number[]): number => segmentGapMm(Float64Array.from(ends), 0, 1);
    expect(gap(0, 0, 10, 0, 3, 4, 9, 4)).toBe(4);
    expect(gap(0, 0, 10, 0, 13, 4, 20, 9)).toBe(5);
    expect(gap(0, 0, 10, 0, 5, -1, 5, 1)).toBe(0);
  });
});

describe('remarks on a drawing', () => {
  it('are none on a sound one', () => {
    expect(remarksOn([box(10, 10, 20), box(0, 0, 100), box(110, 0, 20)])).toEqual([]);
  });

  it('name open outlines with their gap, pieces, and an outline cut before its hole', () => {
    const gaping: Polyline = [
      [0, 0],
      [50, 0],
      [50, 50],
      [0, 50],
      [0, 1.5],
    ];
    expect(remarksOn([gaping, line(100, 0, 130, 0)])).toEqual([
      { code: 'proof-open-outline', params: { count: 1, gapMm: 1.5 }, at: [0, 0] },
    ]);
    expect(remarksOn([box(0, 0, 100), box(10, 10, 20)])).toEqual([
      { code: 'proof-outside-first', params: { count: 1 }, at: [10, 10] },
    ]);
    const pieces = [line(0, 0, 50, 0), line(50, 0, 50, 50), line(50, 50, 0, 0)];
    expect(remarksOn(pieces).map(({ code }) => code)).toEqual(['proof-in-pieces']);
  });

  it('takes a crowded sheet of 300 000 segments in seconds', () => {
    const ring = (x: number, y: number): Polyline =>
      closed(
        Array.from({ length: 60 }, (_, i) => [
          x + 4 * Math.cos(i / 9.55),
          y + 4 * Math.sin(i / 9.55),
        ]),
      );
    const lines = Array.from({ length: 5000 }, (_, i) =>
      ring(10 * (i % 100), 10 * Math.floor(i / 100)),
    );
    const remarks = remarksOn(lines);
    expect(remarks.map(({ code }) => code)).toEqual(['proof-cuts-close']);
    expect(param(remarks[0], 'leastMm')).toBeCloseTo(2, 1);
  }, 20_000);
});
