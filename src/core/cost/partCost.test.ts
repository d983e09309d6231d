import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  partCost,
  perHourWhereEqual,
  tubeHours,
  usualAssumptions,
  type WayToCut,
} from './partCost.ts';

const way: fc.Arbitrary<WayToCut> = fc.record({
  seconds: fc.double({ min: 0.1, max: 3000, noNaN: true }),
  shareOfRated: fc.double({ min: 0.05, max: 1.2, noNaN: true }),
  knifeShare: fc.double({ min: 0, max: 0.5, noNaN: true }),
});

describe('what a part costs', () => {
  it('is time, knife, tube and sheet: worked by hand', () => {
    const assumed = {
      perHour: 36,
      tubePrice: 400,
      tubeHoursAtRated: 1000,
      lifeExponent: 2,
      sheetPerPart: 0.5,
      knifeSeconds: 60,
    };
    // 100 s at 36 an hour is 1; one in ten needs 60 s of knife: 0.06; at half current the tube lives 4000 h.
    const cost = partCost({ seconds: 100, shareOfRated: 0.5, knifeShare: 0.1 }, assumed);
    expect(cost.time).toBeCloseTo(1, 12);
    expect(cost.knife).toBeCloseTo(0.06, 12);
    expect(tubeHours(assumed, 0.5)).toBeCloseTo(4000, 9);
    expect(cost.tube).toBeCloseTo((100 / 3600 / 4000) * 400, 12);
    expect(cost.total).toBeCloseTo(1 + 0.06 + 400 / 4000 / 36 + 0.5, 12);
  });

  it('is in proportion to time where nothing hangs and the sheet is free', () => {
    fc.assert(
      fc.property(way, (one) => {
        const assumed = { ...usualAssumptions, sheetPerPart: 0 };
        const clean = { ...one, knifeShare: 0 };
        const twice = partCost({ ...clean, seconds: 2 * clean.seconds }, assumed).total;
        expect(twice).toBeCloseTo(2 * partCost(clean, assumed).total, 9);
      }),
    );
  });

  it('is the same for both ways where they cross, and the quicker is cheaper above', () => {
    fc.assert(
      fc.property(way, way, (a, b) => {
        const perHour = perHourWhereEqual(a, b, usualAssumptions);
        if (perHour === null || perHour > 1e6) return;
        const at = (worth: number) => ({ ...usualAssumptions, perHour: worth });
        const [costA, costB] = [partCost(a, at(perHour)), partCost(b, at(perHour))];
        expect(Math.abs(costA.total - costB.total)).toBeLessThan(1e-6 * (1 + costA.total));
        const above = [partCost(a, at(2 * perHour)), partCost(b, at(2 * perHour))] as const;
        const quickerIsA = costA.seconds + costA.knifeSeconds < costB.seconds + costB.knifeSeconds;
        expect(above[0].total < above[1].total).toBe(quickerIsA);
      }),
    );
  });
});
