import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { undescribedMachine, type Machine } from '../../src/core/machine/machine.ts';
import type { Setting } from '../../src/core/machine/setting.ts';
import type { Polyline } from '../../src/core/path/polyline.ts';
import { beamAlong, type BeamAlong } from './beamAlong.ts';
import { planPath } from '../../src/core/motion/planPath.ts';
import { rampedPowerPct } from '../../src/core/tube/powerRamp.ts';

const setting: Setting = { powerPct: 40, minPowerPct: 20, speedMmPerS: 40, passes: 1 };
const straight: Polyline = [
  [0, 0],
  [20, 0],
];
const plan = planPath(straight, {
  speedMmPerS: 40,
  accelerationMmPerS2: 800,
  corner: { rule: 'speed-jump', xMmPerS: 8, yMmPerS: 8 },
});

const along = (machine: Partial<Machine>, change: Partial<Setting> = {}): BeamAlong => {
  const found = beamAlong(plan, { ...undescribedMachine, ...machine }, { ...setting, ...change });
  if (found === null) throw new Error('not known');
  return found;
};

// Many controllers run wholly on the minimum at or below a start speed, then ramp: common practice, no source.
describe('the power ramp of a controller', () => {
  it('runs on power in corners up to its start, on full power at the set speed, straight between', () => {
    const at = (speed: number): number => rampedPowerPct(setting, speed, 10);
    expect([0, 10, 25, 40, 60].map(at)).toEqual([20, 20, 30, 40, 40]);
    expect(rampedPowerPct({ ...setting, speedMmPerS: 8 }, 8, 10)).toBe(20);
    expect(rampedPowerPct({ powerPct: 40, speedMmPerS: 8, passes: 1 }, 3, 10)).toBe(40);
  });

  it('never falls as the head gets faster', () => {
    const speed = fc.double({ min: 0, max: 80, noNaN: true });
    fc.assert(
      fc.property(speed, speed, fc.double({ min: 0, max: 60, noNaN: true }), (a, b, start) => {
        const [slow, fast] = a < b ? [a, b] : [b, a];
        expect(rampedPowerPct(setting, fast, start)).toBeGreaterThanOrEqual(
          rampedPowerPct(setting, slow, start),
        );
      }),
    );
  });
});

describe('the beam along a line', () => {
  it('delivers as the ramp says, and as much energy a mm as set where it runs at full speed', () => {
    const beam = along({});
    expect(beam.deliveredAt(0)).toBeCloseTo(0.2, 12);
    // √(2·800·0.25) = 20 mm/s: half way up the ramp.
    expect(beam.deliveredAt(0.25)).toBeCloseTo(0.3, 12);
    expect(beam.deliveredAt(10)).toBe(0.4);
    expect(beam.energyRatioAt(10)).toBeCloseTo(1, 12);
    expect(beam.energyRatioAt(0.25)).toBeCloseTo(1.5, 12);
    expect(beam.energyRatioAt(0)).toBe(Infinity);
    expect(beam.energyRatioBetween(5, 15)).toBeCloseTo(1, 12);
  });

  it('over the first mm from rest gives mean power times v/a over v²/2a: twice the mean of min and full', () => {
    expect(along({}).energyRatioBetween(0, 1)).toBeCloseTo(1.5, 9);
    // Power in step with speed: the energy a mm stays what it was.
    expect(along({}, { minPowerPct: 0 }).energyRatioBetween(0, 1)).toBeCloseTo(1, 9);
    expect(along({}, { minPowerPct: 0 }).energyRatioBetween(0.2, 0.3)).toBeCloseTo(1, 9);
    // Full power all the way: energy is power times time.
    expect(along({}, { minPowerPct: 40 }).energyRatioBetween(0, 20)).toBeCloseTo(
      (plan.seconds * 40) / 20,
      9,
    );
  });

  it('adds up: two stretches hold what the whole does, wherever it is parted', () => {
    const beam = along({ powerRampStartMmPerS: 13 });
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 19.999, noNaN: true }), (at) => {
        const parts =
          beam.energyRatioBetween(0, at) * at + beam.energyRatioBetween(at, 20) * (20 - at);
        expect(parts).toBeCloseTo(beam.energyRatioBetween(0, 20) * 20, 8);
      }),
    );
  });

  it('follows the tube’s readings, nothing below its threshold, and says where they do not reach', () => {
    const tube = {
      ratedCurrentMa: 20,
      tubePoints: [
        { powerPct: 10, currentMa: 0 },
        { powerPct: 30, currentMa: 10 },
        { powerPct: 50, currentMa: 20 },
      ],
    };
    const beam = along(tube, { powerPct: 50, minPowerPct: 10 });
    expect(beam.deliveredAt(0)).toBe(0);
    expect(beam.energyRatioAt(0)).toBe(0);
    expect(beam.deliveredAt(10)).toBeCloseTo(1, 9);
    const low = { ...setting, powerPct: 10, minPowerPct: 10 };
    expect(beamAlong(plan, { ...undescribedMachine, ...tube }, low)).toBeNull();
    const beyond = { ...setting, powerPct: 100, minPowerPct: 10 };
    expect(beamAlong(plan, { ...undescribedMachine, ...tube }, beyond)).toBeNull();
  });
});
