import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { fit } from '../cutmodel/fit.ts';
import { sharesAt } from '../order/leastCost.ts';
import { orderPoints } from '../order/orderPoints.ts';
import { boundsOf, nothingSeen } from './bounds.ts';
import { playOut, type PlanTable } from './playOut.ts';
import { planPoints, type PlanPoints } from './planPoints.ts';
import { usualPlanCosts, type PlanWish } from './planWish.ts';
import { meanOver, priceSpeed } from './pricedSpeed.ts';
import { bestSpeed, speedGrid } from './speedGrid.ts';

const wish: PlanWish = {
  parts: 90,
  done: 0,
  partsPerSheet: 30,
  partLengthMm: 180,
  wish: 'cheapest',
  acceptNotOutOf100: 3,
  costS: usualPlanCosts,
};
const promise = { outOf100: 97, surePct: 95, partLengthMm: 180, for: 'batch' } as const;

/** A workshop of which all is known. */
const known: PlanPoints = {
  count: 1,
  level: new Float64Array([Math.log(15)]),
  sigma: new Float64Array([0.08]),
  hangBand: new Float64Array([0.06]),
  sheetSd: new Float64Array([0]),
  flawsPerMetre: new Float64Array([0]),
  link: new Uint8Array([0]),
};

const tableOf = (points: PlanPoints): PlanTable => ({
  points,
  grid: speedGrid(points, wish, { slowest: 5, fastest: 30, also: [] }),
  wish,
  boundsAt: boundsOf(wish, promise, nothingSeen),
  notOut: 0,
  typed: -1,
  then: 'climb',
});

describe('an order played out', () => {
  it('costs parts, counting and one typing where all is known', () => {
    const table = tableOf(known);
    const weights = new Float64Array([1]);
    const bounds = table.boundsAt({ left: 90, parts: 30, notOut: 0 });
    const index = bestSpeed(table.grid, weights, bounds, 0);
    const [played] = playOut(table, { act: 'sheet', settings: [{ index, parts: 30 }] }, 1);
    const partS = table.grid.priced(index).costS[0] ?? 0;
    expect(played?.seconds).toBeCloseTo(90 * partS + 3 * 20 + 25, 9);
  });

  it('finds the speed with the least cost of all that keep the bounds', () => {
    const table = tableOf(known);
    const bounds = table.boundsAt({ left: 90, parts: 30, notOut: 0 });
    const best = bestSpeed(table.grid, new Float64Array([1]), bounds, 40);
    const costs = table.grid.speeds.map((_, i) => table.grid.priced(i).costS[0] ?? Infinity);
    expect(costs[best]).toBe(Math.min(...costs));
    // Seconds of cut, of the knife and of parts cut again, by hand: F^3 with the margin in ln speed.
    const speed = table.grid.speeds[best] ?? 0;
    expect(costs[best]).toBeGreaterThan(180 / speed + 2);
    expect(costs[best]).toBeLessThan((180 / speed + 2) * 1.1);
  });

  it('prices a part as the forecast of an order does', () => {
    const study = plainStudy({
      cells: [12, 14, 16, 18, 20, 22].flatMap((speedMmPerS) =>
        (['a', 'b'] as const).map((sheet) => ({
          powerPct: 34,
          speedMmPerS,
          passes: 1,
          sheet,
          grade: speedMmPerS < 17 ? ('out' as const) : ('stays' as const),
        })),
      ),
      promise,
      ask: { powerPct: 34 },
    });
    const fitted = fit(study);
    const points = planPoints(fitted, 34);
    if (points === null) throw new Error('no points');
    const weights = new Float64Array(points.count).fill(1 / points.count);
    for (const speedMmPerS of [10, 13, 16]) {
      const shares = sharesAt(
        orderPoints(fitted, promise),
        { powerPct: 34, speedMmPerS, passes: 1 },
        180,
      );
      const priced = priceSpeed(points, wish, speedMmPerS);
      expect(meanOver(weights, priced.outShare)).toBeCloseTo(shares?.out ?? 9, 1);
    }
  });

  it('lets a sheet that teaches risk what the rest of the order saves, and what is accepted where it is spent', () => {
    const boundsAt = boundsOf(wish, promise, nothingSeen);
    const early = boundsAt({ left: 90, parts: 30, notOut: 0 });
    const late = boundsAt({ left: 30, parts: 30, notOut: 10 });
    // 90 parts at 3 in 100 may lose 2.7; ten are lost: no more is risked than was accepted of any sheet.
    expect(late.share).toBeCloseTo(0.97, 12);
    expect(early.share).toBeLessThan(late.share);
    const promised = boundsOf({ ...wish, wish: 'promise' }, promise, {
      outMmPerS: 12,
      ceilingMmPerS: Infinity,
    });
    expect(promised({ left: 9, parts: 9, notOut: 0 })).toEqual({
      share: 0.97,
      sure: 0.95,
      inMean: false,
      fastestMmPerS: 15,
    });
  });

  it('never keeps a promise at a speed that failed one, however fast something came out', () => {
    const seen = { outMmPerS: 12, ceilingMmPerS: 11.4 };
    const state = { left: 90, parts: 30, notOut: 0 };
    expect(boundsOf({ ...wish, wish: 'promise' }, promise, seen)(state).fastestMmPerS).toBe(11.4);
    expect(boundsOf(wish, promise, seen)(state).fastestMmPerS).toBe(18);
  });
});
