import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { nonNegativeMix } from './nonNegativeLeastSquares.ts';
import { dot } from './symmetricMatrix.ts';

const coordinate = fc.integer({ min: -5, max: 5 });
const vector = fc.tuple(coordinate, coordinate, coordinate);

describe('nonNegativeMix', () => {
  it('finds a mix that is there', () => {
    const { weights, residual } = nonNegativeMix(
      [
        [1, 0],
        [1, 1],
        [0, -1],
      ],
      [3, 1],
    );
    expect(dot(residual, residual)).toBeLessThan(1e-20);
    expect(weights.every((weight) => weight >= 0)).toBe(true);
  });

  it('leaves what no row leans towards', () => {
    expect(nonNegativeMix([[1, 0]], [-2, 0])).toEqual({ weights: [0], residual: [-2, 0] });
  });

  it('meets the conditions of Karush, Kuhn and Tucker, which prove it best', () => {
    fc.assert(
      fc.property(fc.array(vector, { minLength: 1, maxLength: 10 }), vector, (rows, target) => {
        fc.pre(rows.every((row) => dot(row, row) > 0));
        const { weights, residual } = nonNegativeMix(rows, target);
        for (const [i, row] of rows.entries()) {
          expect(weights[i]).toBeGreaterThanOrEqual(0);
          expect(dot(row, residual)).toBeLessThan(1e-9);
          expect(Math.abs((weights[i] ?? NaN) * dot(row, residual))).toBeLessThan(1e-8);
        }
      }),
    );
  });
});
