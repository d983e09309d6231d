import { describe, expect, it } from 'vitest';
import { kronecker, mostKroneckerDimensions } from './kronecker.ts';

describe('kronecker', () => {
  it('steps by the fractional part of √2 in its first coordinate (Richtmyer 1951, by hand)', () => {
    const cube = kronecker(1);
    expect(cube.at(0, 0)).toBeCloseTo((0.5 + Math.SQRT2) % 1, 12);
    expect(cube.at(2, 0)).toBeCloseTo((0.5 + 3 * Math.SQRT2) % 1, 12);
  });

  it('stays strictly inside the cube', () => {
    const cube = kronecker(12);
    for (let i = 0; i < 5000; i += 1) {
      for (let d = 0; d < 12; d += 1) {
        expect(cube.at(i, d) > 0 && cube.at(i, d) < 1).toBe(true);
      }
    }
    expect(mostKroneckerDimensions).toBeGreaterThan(100);
  });

  it('integrates a smooth product better than chance would, 1/√n', () => {
    const cube = kronecker(5);
    const n = 4000;
    let sum = 0;
    for (let i = 0; i < n; i += 1) {
      let product = 1;
      for (let d = 0; d < 5; d += 1) product *= 1 + (cube.at(i, d) - 0.5);
      sum += product;
    }
    // Variance of the product is (1 + 1/12)⁵ − 1; a tenth of the standard error of chance.
    expect(Math.abs(sum / n - 1)).toBeLessThan(
      (0.1 * Math.sqrt((13 / 12) ** 5 - 1)) / Math.sqrt(n),
    );
  });
});
