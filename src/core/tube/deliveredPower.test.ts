import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { deliveredFraction, describePower, powerLimit } from './deliveredPower.ts';
import { undescribedMachine, type Machine } from '../machine/machine.ts';

/** An invented tube whose readings meet what practice says of one rated 19 mA. */
const rated19: Machine = {
  ...undescribedMachine,
  maxPowerPct: 90,
  ratedCurrentMa: 19,
  tubePoints: [
    { powerPct: 10, currentMa: 2.9 },
    { powerPct: 20, currentMa: 5.4 },
    { powerPct: 35, currentMa: 10.1 },
    { powerPct: 50, currentMa: 14.7 },
    { powerPct: 65, currentMa: 19 },
    { powerPct: 75, currentMa: 21.7 },
  ],
};

describe('a tube rated 19 mA that reaches it at about 65 % setting (common practice, no source)', () => {
  it('has its ceiling at 65 %', () => {
    expect(powerLimit(rated19)).toEqual({ powerPct: 65, because: 'rated-current' });
  });

  it('is overdriven at 70 %, and not at 65 %', () => {
    expect(describePower(rated19, 70).overdriven).toBe(true);
    expect(describePower(rated19, 65).overdriven).toBe(false);
    expect(describePower(rated19, 65).ratedCurrentPct).toBe(100);
    expect(deliveredFraction(rated19, 70)).toBeGreaterThan(1);
  });

  it('runs at 40 % of its rating at 7.6 mA', () => {
    const powerPct = 27.2;
    const described = describePower(rated19, powerPct);
    expect(described.currentMa).toBeCloseTo(7.6, 1);
    expect(described.ratedCurrentPct).toBeCloseTo(((described.currentMa ?? NaN) / 7.6) * 40, 10);
    expect(deliveredFraction(rated19, powerPct)).toBeCloseTo(0.4, 2);
  });
});

describe('the power limit', () => {
  it('is the machine’s own where that is lower, or where the rating is never reached', () => {
    expect(powerLimit({ ...rated19, maxPowerPct: 60 })).toEqual({
      powerPct: 60,
      because: 'machine',
    });
    expect(powerLimit({ ...rated19, ratedCurrentMa: 40 })).toEqual({
      powerPct: 90,
      because: 'machine',
    });
    expect(powerLimit(undescribedMachine)).toEqual({ powerPct: 100, because: 'machine' });
  });

  it('is nothing where every known setting is above the rating', () => {
    const tooStrong = { ...rated19, ratedCurrentMa: 0.2 };
    expect(powerLimit(tooStrong).powerPct).toBeLessThan(10);
    const steps = [
      { powerPct: 30, currentMa: 20 },
      { powerPct: 40, currentMa: 20 },
    ];
    expect(powerLimit({ ...rated19, tubePoints: steps })).toEqual({
      powerPct: 0,
      because: 'rated-current',
    });
  });

  it('says the same as the overdrive flag at every setting that is known', () => {
    const readings = fc.uniqueArray(
      fc.record({
        powerPct: fc.integer({ min: 0, max: 100 }),
        currentMa: fc.double({ min: 0, max: 40, noNaN: true }),
      }),
      { minLength: 2, maxLength: 8, selector: (point) => point.powerPct },
    );
    fc.assert(
      fc.property(
        readings,
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.integer({ min: 1, max: 1000 }),
        (tubePoints, ratedCurrentMa, tenths) => {
          const machine = { ...undescribedMachine, tubePoints, ratedCurrentMa };
          const described = describePower(machine, tenths / 10);
          const limit = powerLimit(machine);
          if (described.currentMa === undefined || described.ratedCurrentPct === undefined) return;
          if (Math.abs(described.ratedCurrentPct - 100) < 1e-6) return;
          expect(described.overdriven).toBe(
            limit.because === 'rated-current' && tenths / 10 > limit.powerPct,
          );
        },
      ),
    );
  });
});

describe('the delivered fraction', () => {
  it('is the setting itself where no tube is known, or no rating', () => {
    expect(deliveredFraction(undescribedMachine, 34)).toBe(0.34);
    expect(
      deliveredFraction({ ...undescribedMachine, tubePoints: rated19.tubePoints ?? [] }, 34),
    ).toBe(0.34);
  });

  it('is unknown far past the readings, and then so is the overdrive', () => {
    expect(deliveredFraction(rated19, 86)).toBeNull();
    expect(describePower(rated19, 86)).toEqual({
      powerPct: 86,
      extrapolated: false,
      overdriven: false,
    });
    expect(describePower(rated19, 80).extrapolated).toBe(true);
  });
});
