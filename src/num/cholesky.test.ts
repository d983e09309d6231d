import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cholesky, choleskySolve } from './cholesky.ts';

describe('cholesky', () => {
  it('factors a known matrix (worked by hand: [[4,2],[2,5]] = L·Lᵀ with L = [[2,0],[1,2]])', () => {
    expect(cholesky(Float64Array.of(4, 2, 2, 5), 2)).toEqual(Float64Array.of(2, 0, 1, 2));
  });

  it('refuses a matrix that is not positive definite', () => {
    expect(cholesky(Float64Array.of(1, 2, 2, 1), 2)).toBeNull();
    expect(cholesky(Float64Array.of(Number.NaN), 1)).toBeNull();
  });

  it('solves A·x = b for A = B·Bᵀ + I', () => {
    const entry = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(entry, { minLength: 16, maxLength: 16 }),
        fc.array(entry, { minLength: 4, maxLength: 4 }),
        (b, x) => {
          const a = new Float64Array(16);
          for (let i = 0; i < 4; i += 1) {
            for (let j = 0; j < 4; j += 1) {
              let sum = i === j ? 1 : 0;
              for (let k = 0; k < 4; k += 1) sum += (b[i * 4 + k] ?? 0) * (b[j * 4 + k] ?? 0);
              a[i * 4 + j] = sum;
            }
          }
          const right = Float64Array.from({ length: 4 }, (_, i) =>
            x.reduce((sum, xj, j) => sum + (a[i * 4 + j] ?? 0) * xj, 0),
          );
          const factor = cholesky(a, 4);
          if (!factor) throw new Error('positive definite by construction');
          choleskySolve(factor, 4, right).forEach((value, i) => {
            expect(value).toBeCloseTo(x[i] ?? 0, 8);
          });
        },
      ),
    );
  });
});
