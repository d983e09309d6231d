import { param } from '../../../test/samples/param.ts';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import { fit } from '../cutmodel/fit.ts';
import type { Tally } from '../reading/tally.ts';
import { planNext, type Plan } from './planNext.ts';
import { usualPlanCosts } from './planWish.ts';

const counted = (speedMmPerS: number, hangs: number, sheet: string): Tally => ({
  setting: { powerPct: 34, speedMmPerS, passes: 1 },
  ...{ out: 30 - hangs, hangs, stays: 0, spoilt: 0, partLengthMm: 180, sheet },
});

const planOf = (tallies: readonly Tally[]): Plan => {
  const promise = { outOf100: 97, surePct: 95, partLengthMm: 180, for: 'batch' } as const;
  const fitted = fit(plainStudy({ promise, ask: { powerPct: 34 }, tallies }));
  const plan = planNext(fitted, {
    ...{ parts: 300, done: 90, partsPerSheet: 30, partLengthMm: 180, wish: 'promise' },
    ...{ acceptNotOutOf100: 3, costS: usualPlanCosts },
  });
  if (!plan.ok) throw new Error(plan.problem.code);
  return plan.value;
};

describe('what is foretold of a sheet', () => {
  const { sheet, keeps, reason, next } = planOf([
    counted(12, 0, 'one'),
    counted(13, 0, 'two'),
    counted(14, 6, 'three'),
  ]);
  if (sheet === undefined || keeps === undefined) throw new Error('no sheet');

  it('is of all its parts, and says what the reason says', () => {
    expect(next.act).toBe('sheet');
    expect(sheet.parts).toBe(30);
    expect(sheet.outOf100).toBeCloseTo(100 - Number(param(reason, 'notOutOf100')), 0);
    expect(sheet.notOut).toBeCloseTo((sheet.parts * (100 - sheet.outOf100)) / 100, 6);
    expect(sheet.notOutAtMost).toBeGreaterThanOrEqual(Math.floor(sheet.notOut));
    expect(sheet.sureOfPromisePct).toBeGreaterThanOrEqual(95);
  });

  it('holds the fastest speed that keeps the promise between a sure and a hardly possible one', () => {
    const { sureMmPerS, evenMmPerS, hardlyMmPerS } = keeps;
    expect(sureMmPerS).not.toBeNull();
    expect(sureMmPerS ?? 0).toBeLessThanOrEqual(evenMmPerS ?? 0);
    expect(evenMmPerS ?? 0).toBeLessThanOrEqual(hardlyMmPerS ?? 0);
    expect(hardlyMmPerS ?? 0).toBeLessThan(16);
  });

  it('narrows with every sheet that came out as before', () => {
    const more = planOf([
      ...[12, 13].map((speed) => counted(speed, 0, String(speed))),
      counted(14, 6, 'three'),
      ...[1, 2, 3, 4].map((k) => counted(13, 1, `again ${String(k)}`)),
    ]).keeps;
    const width = (of: typeof keeps): number =>
      Math.log((of.hardlyMmPerS ?? NaN) / (of.sureMmPerS ?? NaN));
    expect(width(more ?? keeps)).toBeLessThan(width(keeps));
  });
});
