import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { StudyCell } from '../cutmodel/cutStudy.ts';
import { fit, type Fit } from '../cutmodel/fit.ts';
import { oddsAt, overSheets, planPoints } from './planPoints.ts';
import { planNext, type Plan } from './planNext.ts';
import { orderAims, usualPlanCosts, type OrderAim } from './planWish.ts';

const powerPct = 40;
const cut = (speedMmPerS: number, count: number, how: Partial<StudyCell>): StudyCell => ({
  ...{ powerPct, speedMmPerS, passes: 1, count, sheet: 'card' },
  ...how,
});
const out = (speedMmPerS: number, count = 8) => cut(speedMmPerS, count, { grade: 'out' });
const stays = (speedMmPerS: number, count = 8) => cut(speedMmPerS, count, { grade: 'stays' });
const welded = (speedMmPerS: number, count = 8) =>
  cut(speedMmPerS, count, { spoilt: 'welded-back' });

const fitted = (cells: readonly StudyCell[]): Fit =>
  fit(
    plainStudy({
      stock: { material: 'cast acrylic', thicknessMm: 3 },
      promise: { outOf100: 90, surePct: 80, partLengthMm: 60, for: 'batch' },
      ask: { powerPct },
      cells,
    }),
  );

const planned = (cells: readonly StudyCell[], wish: OrderAim): Plan => {
  const plan = planNext(fitted(cells), {
    ...{ parts: 120, done: 0, partsPerSheet: 30, partLengthMm: 60 },
    ...{ wish, acceptNotOutOf100: 10, costS: usualPlanCosts },
  });
  if (!plan.ok) throw new Error(plan.problem.code);
  return plan.value;
};

const speedOf = ({ next }: Plan): number =>
  next.act === 'sheet' ? (next.settings[0]?.speedMmPerS ?? NaN) : NaN;

// Far apart: what is slower than 6 mm/s welds, what is faster than 14 is not through.
const wide = [welded(4), welded(5), out(8), out(10), out(12), stays(18), stays(22)];
// One upon the other: what is cut through for certain welds back.
const narrow = [welded(8), welded(10), out(11, 4), stays(12, 4), stays(14)];

describe('an order of what welds back', () => {
  it('is cut between what welds and what is not through, whatever was wished for', () => {
    for (const wish of orderAims) {
      const speed = speedOf(planned(wide, wish));
      expect(speed).toBeGreaterThan(6);
      expect(speed).toBeLessThan(18);
    }
  });

  it('says so where no speed keeps what was asked for, and goes to the one of which most come out', () => {
    const plan = planned(narrow, 'promise');
    if (plan.next.act === 'sheet') {
      expect(plan.reason.code).toBe('plan-nothing-keeps-since-it-welds');
      expect(speedOf(plan)).toBeGreaterThan(8);
    } else expect(plan.next.act).toBe('card');
    expect(plan.keeps?.sureMmPerS).toBeNull();
  });

  it('names a speed that keeps the promise which a search for the slowest would miss', () => {
    const { keeps } = planned(wide, 'promise');
    expect(keeps?.sureMmPerS).toBeGreaterThan(6);
    expect(keeps?.sureMmPerS).toBeLessThanOrEqual(keeps?.evenMmPerS ?? NaN);
  });

  it('hangs where it welds: fewer come out the slower it is cut there, and none fewer are cut through', () => {
    const points = planPoints(fitted(wide), powerPct);
    if (points === null) throw new Error('the power says something');
    const mean = (odds: Float64Array): number =>
      overSheets(odds, points.count).reduce((a, b) => a + b, 0) / points.count;
    const slow = oddsAt(points, 4, 60);
    const well = oddsAt(points, 9, 60);
    expect(mean(slow.out)).toBeLessThan(0.3);
    expect(mean(well.out)).toBeGreaterThan(0.9);
    expect(mean(slow.stays)).toBeLessThanOrEqual(mean(well.stays) + 1e-9);
    expect(mean(slow.out) + mean(slow.hangs) + mean(slow.stays)).toBeCloseTo(1, 9);
  });

  it('is planned as before where nothing was seen to weld', () => {
    const cells = wide.filter(({ spoilt }) => spoilt === undefined);
    expect(planPoints(fitted(cells), powerPct)?.openAt).toBeUndefined();
    expect(planned(cells, 'promise').keeps?.sureMmPerS).toBeGreaterThan(4);
  });
});
