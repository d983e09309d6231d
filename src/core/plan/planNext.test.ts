import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainStudy } from '../../../test/plainStudy.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import { fit } from '../cutmodel/fit.ts';
import { energyCeiling } from '../card/ceiling.ts';
import type { Tally } from '../reading/tally.ts';
import { planNext, type Plan } from './planNext.ts';
import { usualPlanCosts, type PlanWish } from './planWish.ts';

const order: PlanWish = {
  parts: 300,
  done: 0,
  partsPerSheet: 30,
  partLengthMm: 180,
  wish: 'promise',
  acceptNotOutOf100: 3,
  costS: usualPlanCosts,
};

const promise = { outOf100: 97, surePct: 95, partLengthMm: 180, for: 'batch' } as const;
const asked = { promise, ask: { powerPct: 34 } };

const card = [
  [12, 'out'],
  [12, 'out'],
  [16, 'out'],
  [16, 'out'],
  [20, 'hangs'],
  [20, 'stays'],
  [25, 'stays'],
  [25, 'stays'],
] as const;
const cells = card.map(([speedMmPerS, grade]) => ({
  powerPct: 34,
  speedMmPerS,
  passes: 1,
  grade,
  sheet: 'card',
}));

const sheetOf = (speedMmPerS: number, out: number, hangs: number, sheet: string): Tally => ({
  setting: { powerPct: 34, speedMmPerS, passes: 1 },
  out,
  hangs,
  stays: 0,
  spoilt: 0,
  partLengthMm: 180,
  sheet,
});

const planned = (study: Partial<CutStudy>, wish: Partial<PlanWish> = {}): Plan => {
  const plan = planNext(fit(plainStudy({ ...asked, ...study })), { ...order, ...wish });
  if (!plan.ok) throw new Error(plan.problem.code);
  return plan.value;
};

const mainSpeed = ({ next }: Plan): number => {
  if (next.act !== 'sheet') throw new Error(`expected a sheet, not ${next.act}`);
  return next.settings[0]?.speedMmPerS ?? NaN;
};

describe('the next act of an order', () => {
  it('is a small card where nothing is known, and no card where a habit or a count says enough', () => {
    const first = planned({});
    expect(first.next.act).toBe('card');
    expect(first.reason.code).toBe('plan-card-first');
    expect(first.expected.againstCardsFirstMinutes).toBeLessThan(0);
    const byHabit = planned({ habit: { powerPct: 34, speedMmPerS: 12, comesOut: 'always' } });
    expect(byHabit.next.act).toBe('sheet');
    const counted = planned({ tallies: [sheetOf(12, 30, 0, 'a')] }, { done: 30 });
    expect(counted.next.act).toBe('sheet');
  });

  it('is a sheet after a card that shows both sides, slower than what came out one by one', () => {
    const plan = planned({ cells });
    expect(plan.next).toMatchObject({ act: 'sheet' });
    // A part of 180 mm must come through three times over what a shape of 60 mm must.
    expect(mainSpeed(plan)).toBeLessThan(16);
    expect(mainSpeed(plan)).toBeGreaterThan(8);
  });

  it('climbs while sheets come out and goes back when one fails', () => {
    const first = mainSpeed(planned({ cells }));
    const good = ['a', 'b', 'c', 'd'].map((name) => sheetOf(first, 30, 0, name));
    const better = mainSpeed(planned({ cells, tallies: good }, { done: 120 }));
    expect(better).toBeGreaterThan(first);
    const bad = sheetOf(better, 20, 10, 'e');
    const back = planned({ cells, tallies: [...good, bad] }, { done: 150 });
    expect(mainSpeed(back)).toBeLessThan(better);
    expect(back.reason.code).toMatch(/plan-(slower|nothing-keeps)/);
  });

  it('keeps the promise by its own account on every sheet, and never cuts slower for the cheapest', () => {
    const study = plainStudy({ ...asked, cells, tallies: [sheetOf(11, 60, 0, 'a')] });
    const fitted = fit(study);
    const plan = planned({ cells, tallies: study.tallies }, { done: 60 });
    expect(fitted.decision.sureAt(34, mainSpeed(plan))).toBeGreaterThan(0.94);
    const cheapest = planned({ cells, tallies: study.tallies }, { done: 60, wish: 'cheapest' });
    expect(mainSpeed(cheapest)).toBeGreaterThanOrEqual(mainSpeed(plan));
  });

  it('is done when the parts are there, and cuts spares on the last sheet where flaws take some', () => {
    expect(planned({ cells }, { done: 300 }).next).toEqual({ act: 'done' });
    const flawed = { ...sheetOf(11, 250, 0, 'a'), spoilt: 50 };
    const last = planned({ cells, tallies: [flawed] }, { parts: 260, done: 250 });
    if (last.next.act !== 'sheet') throw new Error('expected a sheet');
    expect(last.next.settings.reduce((sum, { parts }) => sum + parts, 0)).toBe(12);
  });

  it('gives equal plans for equal evidence', () => {
    expect(planned({ cells })).toEqual(planned({ cells }));
  });

  it('has an act whatever was counted, within the machine, the sheet and the ceiling on line energy', () => {
    const count = fc.record({
      speedMmPerS: fc.integer({ min: 20, max: 400 }).map((tenths) => tenths / 10),
      out: fc.integer({ min: 0, max: 200 }),
      hangs: fc.integer({ min: 0, max: 60 }),
      stays: fc.integer({ min: 0, max: 60 }),
      spoilt: fc.integer({ min: 0, max: 20 }),
    });
    fc.assert(
      fc.property(
        fc.array(count, { minLength: 1, maxLength: 4 }),
        fc.boolean(),
        fc.constantFrom('promise' as const, 'cheapest' as const),
        (counts, withCard, wish) => {
          const tallies = counts.map(({ speedMmPerS, ...ends }, i) => ({
            setting: { powerPct: 34, speedMmPerS, passes: 1 },
            ...ends,
            partLengthMm: 180,
            sheet: `sheet ${String(i)}`,
          }));
          const study = plainStudy({ ...asked, cells: withCard ? cells : [], tallies });
          const fitted = fit(study);
          const plan = planNext(fitted, { ...order, wish, done: 60 });
          if (!plan.ok) throw new Error(plan.problem.code);
          if (!fitted.evidence.hasTally) return;
          if (plan.value.next.act !== 'sheet') throw new Error('no sheet');
          const { settings } = plan.value.next;
          const believed = fitted.decision.v50Quantile(34, 0.5) ?? 0;
          for (const { speedMmPerS, parts } of settings) {
            expect(speedMmPerS).toBeGreaterThanOrEqual(study.machine.speedRangeMmPerS[0]);
            expect(speedMmPerS).toBeLessThanOrEqual(study.machine.speedRangeMmPerS[1]);
            expect(parts).toBeGreaterThan(0);
          }
          const cut = settings.reduce((sum, { parts }) => sum + parts, 0);
          expect(cut).toBeLessThanOrEqual(30);
          // What is tried beside the usual setting is never the larger half of a sheet.
          expect(2 * (settings[0]?.parts ?? 0)).toBeGreaterThanOrEqual(cut);
          expect(settings[0]?.speedMmPerS).toBeGreaterThan(believed / (energyCeiling * 1.5));
          const { minutes, minutesBand } = plan.value.expected;
          expect(minutes).toBeGreaterThan(minutesBand[0] - 1e-9);
          expect(minutes).toBeLessThan(minutesBand[1] + 1e-9);
        },
      ),
      { numRuns: 10, endOnFailure: true },
    );
  });
});
