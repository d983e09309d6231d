import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { cusumChart } from './cusum.ts';
import { ewmaChart } from './ewma.ts';
import { individualsChart } from './individualsChart.ts';

const series = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), {
  minLength: 1,
  maxLength: 30,
});

describe('the weighted average chart', () => {
  it('is the plain series with its three sigmas at λ = 1', () => {
    const chart = ewmaChart([1, -4, 2], { lambda: 1, target: 0, sigma: 1, width: 3 });
    expect(chart.averages).toEqual([0, 1, -4, 2]);
    expect(chart.asymptoticLimits).toEqual([-3, 3]);
    expect(chart.firstSignalExact).toBe(2);
  });

  it('never signals later with its exact limits than with the settled ones', () => {
    fc.assert(
      fc.property(series, fc.double({ min: 0.05, max: 1, noNaN: true }), (x, lambda) => {
        const chart = ewmaChart(x, { lambda, target: 0, sigma: 10, width: 2 });
        expect(chart.firstSignalExact ?? Infinity).toBeLessThanOrEqual(
          chart.firstSignalAsymptotic ?? Infinity,
        );
      }),
    );
  });
});

describe('the cumulative sum chart', () => {
  it('follows the recursion by hand', () => {
    // target 10, slack 1, limit 4: above 2, then 2+2 = 4 (not yet beyond), then 5.
    const chart = cusumChart([13, 13, 12], { target: 10, slack: 1, limit: 4 });
    expect(chart).toEqual({ high: [2, 4, 5], low: [0, 0, 0], firstSignal: 3 });
  });

  it('mirrors', () => {
    fc.assert(
      fc.property(series, (x) => {
        const given = { target: 0, slack: 0.5, limit: 20 };
        const [one, other] = [
          cusumChart(x, given),
          cusumChart(
            x.map((value) => -value),
            given,
          ),
        ];
        expect(one.high).toEqual(other.low);
        expect(one.firstSignal).toBe(other.firstSignal);
      }),
    );
  });
});

describe('the chart of individuals', () => {
  it('gives the handbook’s limits', () => {
    // NIST/SEMATECH e-Handbook 6.3.2.2, flow rate: 50.81, 1.8778, 45.8159 to 55.8041.
    const chart = individualsChart([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]);
    expect(chart?.mean).toBeCloseTo(50.81, 10);
    expect(chart?.meanMovingRange).toBeCloseTo(1.8778, 4);
    expect(chart?.limits[0]).toBeCloseTo(45.8159, 4);
    expect(chart?.limits[1]).toBeCloseTo(55.8041, 4);
  });

  it('needs two', () => {
    expect(individualsChart([3])).toBeNull();
  });
});
