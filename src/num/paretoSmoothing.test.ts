import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generalisedPareto, paretoQuantile, paretoSmoothed } from './paretoSmoothing.ts';
import { seededRandom } from './seededRandom.ts';

describe('smoothed importance weights', () => {
  // An exponential of rate 1 drawn from one of rate a > 1: the ratio exceeds t with probability t^(−a/(a−1)), so its tail has
  // the shape k = (a − 1)/a exactly.
  for (const a of [1.25, 2, 4]) {
    it(`find the shape of a tail that is known: rate ${String(a)}`, () => {
      // One sample knows it to (1 + k)/√425; twenty together to about 0.02.
      const shapes = Array.from({ length: 20 }, (_, seed) => {
        const random = seededRandom(seed + 1);
        const logRatios = Float64Array.from(
          { length: 20_000 },
          () => ((a - 1) / a) * -Math.log(random.uniform()),
        );
        return paretoSmoothed(logRatios).shape;
      });
      const mean = shapes.reduce((sum, shape) => sum + shape, 0) / shapes.length;
      expect(Math.abs(mean - (a - 1) / a)).toBeLessThan(0.06);
    });
  }

  it('estimate a mean that raw weights of so heavy a tail estimate badly, with a smaller error', () => {
    // The mean of an exponential of rate 1 is 1. Twenty samples of 1000 from rate 3 (shape 2/3).
    const errors = { raw: 0, smooth: 0 };
    for (let seed = 1; seed <= 20; seed += 1) {
      const random = seededRandom(seed);
      const x = Float64Array.from({ length: 1000 }, () => -Math.log(random.uniform()) / 3);
      const logRatios = x.map((value) => 2 * value);
      const { weight } = paretoSmoothed(logRatios);
      const raw = logRatios.map(Math.exp);
      const sum = raw.reduce((all, w) => all + w, 0);
      errors.raw += (x.reduce((all, v, i) => all + (v * (raw[i] ?? 0)) / sum, 0) - 1) ** 2;
      errors.smooth += (x.reduce((all, v, i) => all + v * (weight[i] ?? 0), 0) - 1) ** 2;
    }
    expect(errors.smooth).toBeLessThan(errors.raw);
  });

  it('leave weights that are all alike as they are, and fit no tail', () => {
    const { weight, shape, effectivePoints } = paretoSmoothed(new Float64Array(500));
    expect(shape).toBe(Infinity);
    expect(effectivePoints).toBeCloseTo(500, 9);
    expect(weight.every((w) => Math.abs(w - 1 / 500) < 1e-15)).toBe(true);
  });

  it('sum to 1 and keep their order, whatever they were', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -30, max: 30, noNaN: true }), { minLength: 30, maxLength: 300 }),
        (logs) => {
          const given = Float64Array.from(logs);
          const { weight } = paretoSmoothed(given);
          expect(weight.reduce((sum, w) => sum + w, 0)).toBeCloseTo(1, 9);
          const order = [...given.keys()].sort((a, b) => (given[a] ?? 0) - (given[b] ?? 0));
          order.reduce((before, i) => {
            expect(weight[i] ?? 0).toBeGreaterThanOrEqual((weight[before] ?? 0) - 1e-12);
            return i;
          });
        },
      ),
    );
  });
});

describe('a generalised Pareto distribution', () => {
  it('is found again from its own quantiles', () => {
    for (const shape of [0.1, 0.4, 0.8]) {
      const values = Float64Array.from({ length: 2000 }, (_, i) =>
        paretoQuantile((i + 0.5) / 2000, { shape, scale: 2 }),
      );
      const found = generalisedPareto(values);
      expect(found.shape).toBeCloseTo(shape, 1);
      expect(found.scale).toBeCloseTo(2, 1);
    }
  });

  it('has the quantiles of closed form', () => {
    // Shape 1: F(x) = 1 − 1/(1 + x); shape 0: the exponential.
    expect(paretoQuantile(0.75, { shape: 1, scale: 1 })).toBeCloseTo(3, 12);
    expect(paretoQuantile(0.75, { shape: 0, scale: 1 })).toBeCloseTo(Math.log(4), 12);
  });
});
