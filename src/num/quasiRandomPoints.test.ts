import { describe, expect, it } from 'vitest';
import { centredDiscrepancy } from './centredDiscrepancy.ts';
import { quasiRandomPoints } from './quasiRandomPoints.ts';
import { mostSobolDimensions, sobol, sobolBits, sobolInteger } from './sobol.ts';
import { seededRandom } from './seededRandom.ts';

describe('even points', () => {
  it('are those of Sobol by index, whatever order they are asked in', () => {
    const points = sobol(40, 16);
    for (const [index, point] of [...points.entries()].toReversed()) {
      expect(point.map((_, d) => sobolInteger(index, d) / 2 ** sobolBits)).toEqual(point);
    }
    expect(() => sobolInteger(3, mostSobolDimensions)).toThrow(RangeError);
  });

  it('lie inside the cube, in any number of dimensions', () => {
    const cube = quasiRandomPoints(40);
    for (let index = 0; index < 300; index += 1) {
      for (let d = 0; d < 40; d += 1) {
        expect(cube.at(index, d)).toBeGreaterThan(0);
        expect(cube.at(index, d)).toBeLessThan(1);
      }
    }
  });

  it('keep one point in each of 256 even strips of every Sobol coordinate, as the shift must (a net stays a net)', () => {
    const cube = quasiRandomPoints(mostSobolDimensions);
    for (let d = 0; d < mostSobolDimensions; d += 1) {
      const strips = Array.from({ length: 256 }, (_, i) => Math.floor(256 * cube.at(i, d)));
      expect(new Set(strips).size).toBe(256);
    }
  });

  it('fill six dimensions more evenly than chance does', () => {
    const cube = quasiRandomPoints(6);
    const random = seededRandom(3);
    const points = (at: (i: number, d: number) => number): number[][] =>
      Array.from({ length: 500 }, (_, i) => Array.from({ length: 6 }, (__, d) => at(i, d)));
    expect(centredDiscrepancy(points(cube.at))).toBeLessThan(
      0.2 * centredDiscrepancy(points(() => random.uniform())),
    );
  });
});
