import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaCdf } from '../../num/distributions.ts';
import type { Order } from './order.ts';
import { orderForecast } from './orderForecast.ts';
import type { OrderPoints } from './orderPoints.ts';

const setting = { powerPct: 30, speedMmPerS: 20, passes: 1 };

/** Points that all know the same shares, whatever the sheet. */
const known = (out: number, hangs: number, flaw?: number): OrderPoints => ({
  count: 10,
  weight: new Float64Array(10).fill(0.1),
  sigma: new Float64Array(10).fill(1),
  flawsLearnt: flaw !== undefined,
  orderSd: new Float64Array(10),
  sheetSd: new Float64Array(10),
  at: () => (_, __, into) => {
    into.out = out;
    into.hangs = hangs;
    into.flaw = flaw ?? 0;
  },
});

/** Points whose sheets are either wholly good or wholly bad, half each. */
const goodOrBadSheets: OrderPoints = {
  ...known(1, 0),
  sheetSd: new Float64Array(10).fill(1),
  at: () => (_, shift, into) => {
    into.out = shift > 0 ? 1 : 0;
    into.hangs = 1 - into.out;
    into.flaw = 0;
  },
};

const orderOf = (parts: number, partsPerSheet = parts): Order => ({
  parts,
  partsPerSheet,
  partLengthMm: 60,
  setting,
});

/** P(at most k of n) at chance p: binomial sums are incomplete beta functions. */
const atMost = (k: number, n: number, p: number): number =>
  k >= n ? 1 : betaCdf(1 - p, n - k, k + 1);

describe('what an order comes to', () => {
  it('is the binomial where the share is known', () => {
    const forecast = orderForecast(known(0.95, 0.04), orderOf(60));
    expect(forecast?.hang.mean).toBeCloseTo(60 * 0.04, 1);
    expect(forecast?.stay.mean).toBeCloseTo(60 * 0.01, 1);
    expect(Math.abs((forecast?.chanceAllOut ?? 0) - 0.95 ** 60)).toBeLessThan(0.01);
    // The band is the binomial's: outside it less than one in twenty either way, by the exact sums.
    const { low, high } = forecast?.hang ?? { low: -1, high: -1 };
    expect(atMost(high, 60, 0.04)).toBeGreaterThan(0.94);
    expect(atMost(high - 1, 60, 0.04)).toBeLessThan(0.96);
    expect(low === 0 ? 0 : atMost(low - 1, 60, 0.04)).toBeLessThan(0.06);
  });

  it('plans as the negative binomial does', () => {
    const forecast = orderForecast(known(0.95, 0.04), orderOf(60));
    const exact = [60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70].find(
      (n) => atMost(n - 60, n, 0.05) >= 0.9,
    );
    expect(forecast?.plan).toBe(exact);
    const withKnife = [60, 61, 62, 63, 64].find((n) => atMost(n - 60, n, 0.01) >= 0.9);
    expect(forecast?.planWithKnife).toBe(withKnife);
  });

  it('shares the luck of a sheet among its parts: equal mean, wider count', () => {
    const oneSheet = orderForecast(goodOrBadSheets, orderOf(60));
    const manySheets = orderForecast(goodOrBadSheets, orderOf(60, 2));
    expect(oneSheet?.hang).toMatchObject({ low: 0, high: 60 });
    expect(oneSheet?.hang.mean).toBeCloseTo(30, -0.5);
    expect(manySheets?.hang.mean).toBeCloseTo(30, -0.5);
    expect((manySheets?.hang.high ?? 99) - (manySheets?.hang.low ?? 0)).toBeLessThan(30);
    expect(oneSheet?.chanceAllOut).toBeCloseTo(0.5, 1);
  });

  it('counts those that meet a flaw, half of them among those that hang', () => {
    const forecast = orderForecast(known(0.9, 0.05, 0.1), orderOf(100));
    expect(forecast?.meetFlaw?.mean).toBeCloseTo(10, 0);
    expect(forecast?.hang.mean).toBeCloseTo(5, 0);
    expect(forecast?.stay.mean).toBeCloseTo(5, 0);
  });

  it('has no plan where nearly nothing comes out', () => {
    expect(orderForecast(known(0.1, 0.1), orderOf(20))?.plan).toBeNull();
  });

  it('says the same to the same question, and says nothing where the power says nothing', () => {
    const ask = () => orderForecast(known(0.9, 0.05), orderOf(30, 7));
    expect(ask()).toEqual(ask());
    expect(orderForecast({ ...known(1, 0), at: () => null }, orderOf(3))).toBeNull();
  });

  it('keeps its counts in order, whatever the shares', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 1, max: 200 }),
        (out, ofRest, parts) => {
          const forecast = orderForecast(known(out, ofRest * (1 - out)), orderOf(parts));
          if (!forecast) throw new Error('no forecast');
          for (const { mean, low, high } of [forecast.comeOut, forecast.hang, forecast.stay]) {
            expect(low).toBeLessThanOrEqual(high);
            expect(mean).toBeGreaterThanOrEqual(0);
            expect(mean).toBeLessThanOrEqual(parts);
          }
          const sum = forecast.comeOut.mean + forecast.hang.mean + forecast.stay.mean;
          expect(sum).toBeCloseTo(parts, 9);
          const { plan, planWithKnife } = forecast;
          if (plan !== null) {
            expect(plan).toBeGreaterThanOrEqual(parts);
            expect(planWithKnife ?? 0).toBeLessThanOrEqual(plan);
          }
        },
      ),
      { numRuns: 10 },
    );
  });
});
