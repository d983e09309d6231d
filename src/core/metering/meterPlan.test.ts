import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { TubePoint } from '../machine/machine.ts';
import { meterPlan, widestGapPct, type MeterPlan } from './meterPlan.ts';
import { firingBracket, litSettings, meterSettings } from './meterSettings.ts';

interface Tube {
  readonly ratedMa: number;
  readonly drawsMa: (powerPct: number) => number;
}

/** Fires at the first setting that wants a reading until none does. */
const follow = ({ ratedMa, drawsMa }: Tube, maxPowerPct = 100): readonly TubePoint[] => {
  let readings: readonly TubePoint[] = [];
  for (let round = 0; round < 80; round += 1) {
    const step = planFor(ratedMa, readings, maxPowerPct).steps.find((s) => s.have < s.wanted);
    if (step === undefined) return readings;
    readings = [...readings, { powerPct: step.powerPct, currentMa: drawsMa(step.powerPct) }];
  }
  throw new Error('the plan never ends');
};

const planFor = (
  ratedCurrentMa: number,
  readings: readonly TubePoint[],
  maxPowerPct = 100,
): MeterPlan => {
  const plan = meterPlan({ ratedCurrentMa, maxPowerPct, readings });
  if (!plan.ok) throw new Error(plan.problem.code);
  return plan.value;
};

const tube = (fromPct: number, leastMa: number, slope: number, ratedMa: number): Tube => ({
  ratedMa,
  drawsMa: (pct) => (pct < fromPct ? 0 : leastMa + slope * (pct - fromPct)),
});

describe('the plan of a metering', () => {
  it('begins low, where no tube is near its rating', () => {
    expect(planFor(19, []).steps.map(({ powerPct }) => powerPct)).toEqual([5, 10, 15, 20, 30]);
    expect(planFor(19, []).complete).toBe(false);
  });

  it('does not plan without a rated current: nobody would know where to stop', () => {
    const plan = meterPlan({ maxPowerPct: 100, readings: [] });
    expect(plan).toMatchObject({ ok: false, problem: { code: 'meter-plan-needs-rating' } });
  });

  it('finds threshold and rating of a tube that reaches 19 mA at 65 % (common practice, no source)', () => {
    const readings = follow(tube(9.3, 3, 16 / 55.7, 19));
    const settings = meterSettings(readings);
    expect(firingBracket(settings)).toEqual({ darkAtPct: 8, firesAtPct: 10 });
    expect(settings.at(-1)?.powerPct).toBeGreaterThanOrEqual(64);
    expect(settings.at(-1)?.powerPct).toBeLessThanOrEqual(65);
    expect(readings.length).toBeLessThanOrEqual(24);
  });

  it('says what a setting is expected to draw', () => {
    const plan = planFor(30, [
      { powerPct: 20, currentMa: 6 },
      { powerPct: 30, currentMa: 9 },
    ]);
    const next = plan.steps.find(({ powerPct }) => powerPct === 42);
    expect(next).toMatchObject({ why: 'span', have: 0, wanted: 2 });
    expect(next?.expectedMa).toBeCloseTo(12.6, 9);
  });

  it('goes on looking where nothing fires, and stops at the machine’s own limit', () => {
    const dark = [5, 10, 15, 20, 30].map((powerPct) => ({ powerPct, currentMa: 0 }));
    expect(planFor(19, dark).steps.at(-1)?.powerPct).toBe(40);
    const limited = follow(tube(9.3, 3, 0.2, 19), 50);
    expect(Math.max(...limited.map(({ powerPct }) => powerPct))).toBeLessThanOrEqual(50);
  });

  it.each([
    [20, 30],
    [10, 24.5],
  ])('asks for nothing above %s %% where that drew %s mA of 24', (powerPct, currentMa) => {
    const { steps } = planFor(24, [{ powerPct, currentMa }]);
    expect(steps.at(-1)?.powerPct).toBe(powerPct);
    // Nor is it fired there again.
    expect(steps.at(-1)).toMatchObject({ have: 1, wanted: 1 });
  });

  it('goes up no further than a steep tube bears, however little of it is known', () => {
    const readings = [
      ...[5, 10, 15].map((powerPct) => ({ powerPct, currentMa: 0 })),
      { powerPct: 20, currentMa: 15 },
    ];
    // From dark at 15 % to 15 mA at 20 %: 24 mA may be reached at 23 %, and the threshold is looked for below first.
    expect(Math.max(...planFor(24, readings).steps.map(({ powerPct }) => powerPct))).toBe(20);
    // A point more would draw 26 mA by the line through the last two.
    const near = [
      { powerPct: 27, currentMa: 17 },
      { powerPct: 28, currentMa: 20 },
      { powerPct: 29, currentMa: 23 },
    ];
    expect(Math.max(...planFor(24, near).steps.map(({ powerPct }) => powerPct))).toBe(29);
  });

  it('ends for any tube: threshold within 2 points, no wide gap, rating not passed', () => {
    const any = fc.record({
      fromPct: fc.double({ min: 0.5, max: 25, noNaN: true }),
      leastMa: fc.double({ min: 1, max: 5, noNaN: true }),
      slope: fc.double({ min: 0.1, max: 0.8, noNaN: true }),
      ratedMa: fc.double({ min: 12, max: 40, noNaN: true }),
    });
    fc.assert(
      fc.property(any, ({ fromPct, leastMa, slope, ratedMa }) => {
        const straight = tube(fromPct, leastMa, slope, ratedMa);
        // A tube lights with a leap at least as high as it rises over the five points that a first look may miss the threshold by
        // (common practice, no source), and the first setting at which that look can find it lit is one that it bears.
        const found = [5, 10, 15, 20, 30].find((powerPct) => straight.drawsMa(powerPct) > 0) ?? 30;
        fc.pre(leastMa >= 5 * slope && straight.drawsMa(found) <= ratedMa);
        const settings = meterSettings(follow(straight));
        const lit = litSettings(settings);
        const firing = firingBracket(settings);
        expect(firing).not.toBeNull();
        if (firing?.darkAtPct != null)
          expect(firing.firesAtPct - firing.darkAtPct).toBeLessThanOrEqual(2);
        expect(lit.at(-1)?.meanMa).toBeLessThanOrEqual(ratedMa * (1 + 1e-9));
        for (const [i, { powerPct }] of lit.slice(1).entries())
          expect(powerPct - (lit[i]?.powerPct ?? NaN)).toBeLessThanOrEqual(widestGapPct);
        for (const { readingsMa } of lit) expect(readingsMa.length).toBeGreaterThanOrEqual(1);
      }),
    );
  });
});
