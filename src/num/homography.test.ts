import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import {
  homographyNearest,
  homographyThrough,
  project,
  type Homography,
  type Point,
  type PointPair,
} from './homography.ts';
import { seededRandom } from './seededRandom.ts';

const corners: readonly Point[] = [
  [0, 0],
  [120, 0],
  [120, 90],
  [0, 90],
];
const grid: readonly Point[] = [0, 40, 80, 120].flatMap((x) =>
  [0, 45, 90].map((y): Point => [x, y]),
);
const camera: Homography = [
  [4.1, 0.35, 210],
  [-0.28, 3.9, 150],
  [0.00021, -0.00033, 1],
];
const seen = (places: readonly Point[], through = camera): readonly PointPair[] =>
  places.map((source) => ({ source, target: project(through, source) }));

const distance = ([a, b]: Point, [c, d]: Point): number => Math.hypot(a - c, b - d);

describe('a map between planes', () => {
  it('knows the square seen as a trapezoid', () => {
    // By hand: (x, y) → (4x + 2y, 4y)/(1 + y).
    const square: readonly Point[] = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
    ];
    const trapezoid: readonly Point[] = [
      [0, 0],
      [4, 0],
      [3, 2],
      [1, 2],
    ];
    const found = homographyThrough(
      square.map((source, i) => ({ source, target: trapezoid[i] ?? [0, 0] })),
    );
    expect(found.ok).toBe(true);
    if (!found.ok) return;
    expect(distance(project(found.matrix, [0.5, 0.5]), [2, 4 / 3])).toBeLessThan(1e-12);
    expect(found.mirrored).toBe(false);
  });

  it('comes back from four pairs and from twelve', () => {
    const tilt = fc.double({ min: -0.002, max: 0.002, noNaN: true });
    const lean = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(tilt, tilt, lean, lean, (g, h, b, d) => {
        const made: Homography = [
          [4, b, 200],
          [d, 3.5, 100],
          [g, h, 1],
        ];
        for (const places of [corners, grid]) {
          for (const fit of [homographyThrough, homographyNearest]) {
            const found = fit(seen(places, made));
            expect(found.ok).toBe(true);
            if (!found.ok) return;
            expect(found.rms).toBeLessThan(1e-7);
            expect(distance(project(found.matrix, [70, 50]), project(made, [70, 50]))).toBeLessThan(
              1e-6,
            );
          }
        }
      }),
      { numRuns: 50 },
    );
  });

  it('comes nearest where the picture is noisy', () => {
    const random = seededRandom(5);
    const noisy = seen(grid).map(({ source, target: [x, y] }): PointPair => ({
      source,
      target: [x + random.normal(), y + random.normal()],
    }));
    const [through, nearest] = [homographyThrough(noisy), homographyNearest(noisy)];
    expect(through.ok && nearest.ok).toBe(true);
    if (!through.ok || !nearest.ok) return;
    expect(nearest.rms).toBeLessThanOrEqual(through.rms);
    // 24 numbers less 8 fitted, of variance 1 each, over 12 points: about √(16/12).
    expect(nearest.rms).toBeLessThan(2);
    expect(distance(project(nearest.matrix, [60, 45]), project(camera, [60, 45]))).toBeLessThan(
      1.5,
    );
  });

  it('tells a mirrored card', () => {
    const found = homographyThrough(
      corners.map(([x, y]) => ({ source: [x, y], target: [120 - x, y] })),
    );
    expect(found.ok && found.mirrored).toBe(true);
  });

  it('refuses pairs that do not fix one map', () => {
    const onLine: readonly Point[] = [
      [0, 0],
      [5, 0],
      [10, 0],
      [3, 7],
    ];
    const twice: readonly Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [10, 10],
    ];
    expect(homographyThrough(seen(corners.slice(0, 3)))).toEqual({ ok: false, reason: 'too-few' });
    expect(homographyThrough(seen(onLine))).toEqual({ ok: false, reason: 'degenerate' });
    expect(homographyThrough(seen(twice))).toEqual({ ok: false, reason: 'degenerate' });
    const collapsed = onLine.map((target, i): PointPair => ({
      source: corners[i] ?? [0, 0],
      target,
    }));
    expect(homographyThrough(collapsed)).toEqual({ ok: false, reason: 'degenerate' });
    const still = corners.map((source): PointPair => ({ source, target: [1, 1] }));
    expect(homographyThrough(still)).toEqual({ ok: false, reason: 'degenerate' });
  });
});
