import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { beyondLimits } from '../card/firingLimits.ts';
import type { Machine } from '../machine/machine.ts';
import type { Setting } from '../machine/setting.ts';
import { leastSteadyPct, powerLimit } from '../tube/deliveredPower.ts';
import { doseLadder, doseOf, doseReach, settingForDose } from './doseLadder.ts';
import { burning, limitsBeside, markProblem } from './markLimits.ts';
import { makingBeside, proposeEngraving, proposeScore } from './proposeMarks.ts';
import { isDrawn, linesOver, type Mark } from './mark.ts';

const machine: Machine = { maxPowerPct: 80, nominalW: 60, speedRangeMmPerS: [1, 400] };
const cut: Setting = { powerPct: 40, speedMmPerS: 14, passes: 1, air: 'pump' };
const stock = { material: 'birch plywood', nominalThicknessMm: 3 };
const limits = limitsBeside({ cut, stock }, machine);

const anyMachine: fc.Arbitrary<Machine> = fc
  .record({
    maxPowerPct: fc.integer({ min: 20, max: 100 }),
    fastest: fc.integer({ min: 50, max: 800 }),
    nominalW: fc.option(fc.integer({ min: 30, max: 150 }), { nil: undefined }),
    dark: fc.integer({ min: 2, max: 12 }),
    tube: fc.boolean(),
    ratedCurrentMa: fc.integer({ min: 12, max: 30 }),
  })
  .map(({ maxPowerPct, fastest, nominalW, dark, tube, ratedCurrentMa }) => ({
    maxPowerPct,
    speedRangeMmPerS: [1, fastest] as const,
    ...(nominalW === undefined ? {} : { nominalW }),
    ...(tube
      ? {
          ratedCurrentMa,
          tubePoints: [
            { powerPct: dark, currentMa: 0 },
            { powerPct: dark + 4, currentMa: 3 },
            { powerPct: 40, currentMa: 11 },
            { powerPct: 90, currentMa: 27 },
          ],
        }
      : {}),
  }));

const anyCut = fc.record({
  powerPct: fc.integer({ min: 20, max: 80 }),
  speedMmPerS: fc.integer({ min: 2, max: 60 }),
  passes: fc.integer({ min: 1, max: 3 }),
});
const anyStock = fc.record({
  material: fc.constantFrom('birch plywood', 'acrylic', 'mdf', 'paper', 'leather'),
  nominalThicknessMm: fc.constantFrom(0.5, 2, 3, 6, 10),
});
const anySpacing = fc.constantFrom(0.05, 0.1, 0.2, 0.5);

describe('where to begin with marks', () => {
  it('knows the figures of one machine', () => {
    const score = proposeScore(cut, limits);
    const engraving = proposeEngraving(cut, limits, 0.1);
    // By hand: half of 40 %; the cut of 14 mm/s at 40 % shows 7 mm/s at 20 %; 15 % of that line energy are 46.7 mm/s.
    expect(score).toEqual({
      ok: true,
      value: {
        kind: 'score',
        setting: { powerPct: 20, speedMmPerS: 47, passes: 1, air: 'pump' },
      },
    });
    // Two lines burn each place: 12 % shows 4.2 mm/s, 2 · 4.2 / 300 = 0.028 at the least and 0.25 at the most; halfway in ratio
    // 0.0837, which 35 % (12.25 mm/s) gives at 293 mm/s and 36 % only above 300.
    expect(engraving).toMatchObject({
      ok: true,
      value: { setting: { powerPct: 35, speedMmPerS: 293, passes: 1 }, lineSpacingMm: 0.1 },
    });
  });

  it('keeps to every limit of machine, tube and sheet, on any machine, sheet and cut', () => {
    let proposed = 0;
    fc.assert(
      fc.property(anyMachine, anyCut, anyStock, anySpacing, (on, beside, of, spacing) => {
        const held = limitsBeside({ cut: beside, stock: of }, on);
        for (const mark of [proposeScore(beside, held), proposeEngraving(beside, held, spacing)]) {
          if (!mark.ok) {
            expect(mark.problem.code).toBe('marks-no-room');
            continue;
          }
          proposed += 1;
          const { value } = mark;
          if (!isDrawn(value)) throw new Error('tape');
          expect(beyondLimits(burning(value), 'marks', held)).toEqual([]);
          expect(value.setting.powerPct).toBeLessThanOrEqual(powerLimit(on).powerPct);
          expect(value.setting.powerPct).toBeGreaterThanOrEqual(leastSteadyPct(on) - 1e-9);
          // Its line energy, lines that overlap counted, is no more than a quarter of the cut that was proven.
          const times = burning(value).passes / value.setting.speedMmPerS;
          const ofCut = beside.passes / beside.speedMmPerS;
          if (on.tubePoints === undefined)
            expect(
              (times * value.setting.powerPct) / (ofCut * beside.powerPct),
            ).toBeLessThanOrEqual(0.25 * 1.001);
        }
      }),
      { numRuns: 300 },
    );
    expect(proposed).toBeGreaterThan(200);
  });
});

describe('a ladder of doses', () => {
  const making = makingBeside(cut, limits, { kind: 'engrave', lineSpacingMm: 0.1 });

  it('climbs by one factor, from a steady tube to what surely does not come through', () => {
    const [least, most] = doseReach(making);
    const doses = doseLadder(8, making).map((setting) => doseOf(setting, making));
    expect(doses).toHaveLength(8);
    expect(doses[0]).toBeCloseTo(least, 2);
    expect(doses.at(-1)).toBeCloseTo(most, 3);
    const factor = (most / least) ** (1 / 7);
    for (const [i, dose] of doses.entries())
      if (i > 0) expect(dose / (doses[i - 1] ?? NaN)).toBeCloseTo(factor, 1);
  });

  it('gives no more than was asked for, and nearly all of it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.03, max: 0.25, noNaN: true }), (dose) => {
        const setting = settingForDose(dose, making);
        if (setting === undefined) throw new Error('out of reach');
        const given = doseOf(setting, making);
        expect(given).toBeLessThanOrEqual(dose * (1 + 1e-9));
        expect(given).toBeGreaterThan(dose * 0.99);
      }),
    );
  });

  it('has no step where even the gentlest may come through', () => {
    const slow: Machine = { ...machine, speedRangeMmPerS: [1, 20] };
    const held = limitsBeside({ cut, stock }, slow);
    expect(doseLadder(8, makingBeside(cut, held, { kind: 'engrave', lineSpacingMm: 0.1 }))).toEqual(
      [],
    );
    expect(proposeEngraving(cut, held, 0.1)).toMatchObject({
      ok: false,
      problem: { code: 'marks-no-room' },
    });
  });
});

describe('what a mark is held to', () => {
  const engraving = (over: Partial<Setting>, lineSpacingMm = 0.1): Mark => ({
    kind: 'engrave',
    setting: { powerPct: 20, speedMmPerS: 60, passes: 1, ...over },
    lineSpacingMm,
  });

  it('counts the lines that overlap', () => {
    expect(linesOver(0.1)).toBeCloseTo(2, 12);
    expect(linesOver(0.5)).toBe(1);
    // 7 mm/s at 20 %: 7/60 = 0.117 of it a line, twice that where two overlap, more than a quarter where four do.
    expect(markProblem(engraving({}), limits)).toBeUndefined();
    expect(markProblem(engraving({}, 0.05), limits)?.code).toBe('fires-would-cut');
  });

  it('is the machine, the tube and the proven cut', () => {
    expect(markProblem(engraving({ powerPct: 90, speedMmPerS: 400 }), limits)?.code).toBe(
      'fires-above-machine',
    );
    expect(markProblem(engraving({ speedMmPerS: 500 }), limits)?.code).toBe('fires-beyond-speeds');
    expect(markProblem({ kind: 'tape', tape: 'paper' }, limits)).toBeUndefined();
    // A cut that is proven much faster shows a sheet that comes through sooner than was believed.
    const faster = limitsBeside({ cut: { ...cut, speedMmPerS: 40 }, stock }, machine);
    expect(markProblem(engraving({}), faster)?.code).toBe('fires-would-cut');
    const tube: Machine = {
      ...machine,
      ratedCurrentMa: 10,
      tubePoints: [
        { powerPct: 10, currentMa: 0 },
        { powerPct: 50, currentMa: 14 },
      ],
    };
    const held = limitsBeside({ cut, stock }, tube);
    expect(markProblem(engraving({ powerPct: 45, speedMmPerS: 400 }), held)?.code).toBe(
      'fires-above-rated',
    );
  });
});
