import { describe, expect, it } from 'vitest';
import { newtonMode, positiveFactor, type LogDensity } from './newtonMode.ts';

/** Minus Rosenbrock's valley: its only mode is at (1, 1). Rosenbrock (1960), Computer J. 3:175. */
const minusRosenbrock: LogDensity = (point, gradient) => {
  const [x = 0, y = 0] = point;
  gradient[0] = 400 * x * (y - x * x) + 2 * (1 - x);
  gradient[1] = -200 * (y - x * x);
  return -100 * (y - x * x) ** 2 - (1 - x) ** 2;
};

describe('newtonClimb', () => {
  it('climbs Rosenbrock’s valley from its usual start (−1.2, 1)', () => {
    const mode = newtonMode(minusRosenbrock, Float64Array.of(-1.2, 1));
    expect(mode.converged).toBe(true);
    expect(mode.point[0]).toBeCloseTo(1, 3);
    expect(mode.point[1]).toBeCloseTo(1, 3);
  });

  it('finds the top of a paraboloid and its curvature', () => {
    const mode = newtonMode(
      (point, gradient) => {
        const [x = 0, y = 0] = point;
        gradient[0] = -2 * (x - 3);
        gradient[1] = -8 * (y + 1);
        return -((x - 3) ** 2) - 4 * (y + 1) ** 2;
      },
      Float64Array.of(0, 0),
    );
    expect(mode.point[0]).toBeCloseTo(3, 4);
    expect(mode.point[1]).toBeCloseTo(-1, 4);
    expect(mode.curvature[0]).toBeCloseTo(2, 3);
    expect(mode.curvature[3]).toBeCloseTo(8, 3);
  });

  it('climbs to the edge of where a function can be reckoned and no further', () => {
    // Beyond x = 1 there is nothing: neither value nor slope.
    const mode = newtonMode(
      ([x = 0], gradient) => {
        gradient[0] = x < 1 ? 2 : Number.NaN;
        return x < 1 ? 2 * x : Number.NaN;
      },
      Float64Array.of(1 - 1e-5),
    );
    expect(mode.point[0]).toBeLessThan(1);
    expect(mode.factor.every(Number.isFinite)).toBe(true);
  });

  it('leaves a held coordinate where it was', () => {
    const mode = newtonMode(minusRosenbrock, Float64Array.of(0.5, 3), { held: [0] });
    expect(mode.point[0]).toBe(0.5);
    expect(mode.point[1]).toBeCloseTo(0.25, 4);
  });
});

describe('positiveFactor', () => {
  it.each([
    [[4, 2, 2, 3]],
    [[-1e20, 0, 0, 1]],
    [[1e-9, 1e18, 1e18, 1e-9]],
    [[-1e250, 3e249, 3e249, 2]],
  ])('of any finite matrix is finite and lower: %j', (entries) => {
    const factor = positiveFactor(Float64Array.from(entries), 2);
    expect(factor.every(Number.isFinite)).toBe(true);
    expect(factor[1]).toBe(0);
    expect(Math.min(factor[0] ?? 0, factor[3] ?? 0)).toBeGreaterThan(0);
  });

  it('is that of Cholesky where the matrix is positive definite', () => {
    // 4 = 2², 2 = 2·1, 3 = 1² + 2.
    const factor = positiveFactor(Float64Array.of(4, 2, 2, 3), 2);
    expect([...factor]).toEqual([2, 0, 1, Math.SQRT2]);
  });

  it('is refused of what is not finite', () => {
    expect(() => positiveFactor(Float64Array.of(Number.NaN, 0, 0, 1), 2)).toThrow('not finite');
  });
});
