import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { risingOrder, systematicResample } from './systematicResample.ts';

describe('systematic resampling', () => {
  it('takes each as often as its weight says: worked by hand', () => {
    const chosen = systematicResample(
      Float64Array.of(0.5, 0.25, 0.25),
      Float64Array.of(3, 1, 2),
      4,
    );
    expect([...chosen]).toEqual([1, 2, 0, 0]);
  });

  it('takes none less or more often than its weight by one', () => {
    const weight = fc.double({ min: 0.01, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(weight, { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 1, max: 200 }),
        (raw, count) => {
          const sum = raw.reduce((a, b) => a + b, 0);
          const weights = Float64Array.from(raw, (one) => one / sum);
          const chosen = systematicResample(weights, Float64Array.from(raw), count);
          expect(chosen).toHaveLength(count);
          weights.forEach((share, i) => {
            const times = chosen.filter((one) => one === i).length;
            expect(Math.abs(times - count * share)).toBeLessThan(1 + 1e-6);
          });
        },
      ),
    );
  });

  it('orders as the values rise', () => {
    expect([...risingOrder(Float64Array.of(3, 1, 2))]).toEqual([1, 2, 0]);
  });
});
