import { describe, expect, it } from 'vitest';
import { planPoints } from './planPoints.ts';
import { usualPlanCosts, type PlanWish } from './planWish.ts';
import { soundNotOut } from './soundNotOut.ts';
import { fit } from '../cutmodel/fit.ts';
import type { Tally } from '../reading/tally.ts';
import { plainStudy } from '../../../test/plainStudy.ts';

const wish: PlanWish = {
  parts: 300,
  done: 90,
  partsPerSheet: 30,
  partLengthMm: 180,
  wish: 'cheapest',
  acceptNotOutOf100: 3,
  costS: usualPlanCosts,
};

const counted = (speedMmPerS: number, hangs: number, powerPct = 34): Tally => ({
  setting: { powerPct, speedMmPerS, passes: 1 },
  out: 30 - hangs,
  hangs,
  stays: 0,
  spoilt: 0,
  partLengthMm: 180,
});

const points = planPoints(
  fit(
    plainStudy({
      cells: [10, 12, 14, 16, 18, 20, 22, 24].map((speedMmPerS) => ({
        powerPct: 34,
        speedMmPerS,
        passes: 1,
        grade: speedMmPerS < 19 ? 'out' : 'stays',
        sheet: 'card',
      })),
      ask: { powerPct: 34 },
    }),
  ),
  34,
);

const of = (tallies: readonly Tally[], done = 90): number => {
  if (points === null) throw new Error('no points');
  return soundNotOut(tallies, { points, wish: { ...wish, done }, powerPct: 34 });
};

describe('sound parts that did not come out', () => {
  it('are what the speed is expected to cost, not the flaws that were overlooked at a slow one', () => {
    expect(of([counted(6, 1), counted(6, 1), counted(6, 1)])).toBeLessThan(1.5);
    expect(of([counted(18, 9), counted(18, 9), counted(18, 9)])).toBeGreaterThan(9);
  });

  it('are those of this order alone, and as counted at another power', () => {
    const earlier = counted(20, 15);
    const own = [counted(8, 0), counted(8, 0), counted(8, 0)];
    expect(of([earlier, ...own])).toBe(of(own));
    expect(of([counted(30, 7, 50)], 30)).toBe(7);
    expect(of([earlier], 0)).toBe(0);
  });

  it('never are fewer at a faster speed', () => {
    const speeds = [5, 8, 11, 14, 17, 20, 25];
    const expected = speeds.map((speed) => of([counted(speed, 0)]));
    expect(expected).toEqual([...expected].sort((a, b) => a - b));
  });
});
