import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { undescribedMachine } from '../machine/machine.ts';
import { planPath } from '../motion/planPath.ts';
import type { Polyline } from '../path/polyline.ts';
import { adviseCorners, type CornerPowerFacts } from './cornerPower.ts';
import { burnsAtRatio } from './placeVerdict.ts';

const machine = { ...undescribedMachine, powerRampStartMmPerS: 5 };
const setting = { powerPct: 40, speedMmPerS: 20, passes: 1 };
const motion = {
  accelerationMmPerS2: 800,
  corner: { rule: 'speed-jump', xMmPerS: 6, yMmPerS: 6 },
  travelSpeedMmPerS: 200,
} as const;

/** One open line of so many right angles, each as far from the next. */
const stairs = (corners: number, stepMm: number): Polyline =>
  Array.from({ length: corners + 2 }, (_, i) => [
    Math.ceil(i / 2) * stepMm,
    Math.floor(i / 2) * stepMm,
  ]);

const advised = (corners: number, stepMm: number): CornerPowerFacts => {
  const plan = planPath(stairs(corners, stepMm), { ...motion, speedMmPerS: setting.speedMmPerS });
  const limits = { setMmPerS: setting.speedMmPerS, halfOutMmPerS: 26, burnsAtRatio };
  const advice = adviseCorners([{ plan, loops: false }], machine, setting, 1, limits);
  if (advice === null || advice.rampStart === 'unknown') throw new Error('nothing was advised');
  return advice;
};

describe('the power in corners that is advised', () => {
  it('looks at all places of a line of few', () => {
    expect(advised(20, 10).places).toBe(22);
  });

  it('looks at some hundred places of a line of very many, and advises what it would of few alike', () => {
    const [few, many] = [advised(300, 10), advised(20_000, 10)];
    expect(many.places).toBeGreaterThan(400);
    expect(many.places).toBeLessThanOrEqual(800);
    expect(many.best.minPowerPct).toBe(few.best.minPowerPct);
    expect(many.best.unevenness).toBeCloseTo(few.best.unevenness, 2);
  });

  it('never goes above the power at full speed, nor is less even than it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 2, max: 30 }), (n, stepMm) => {
        const { best, equal } = advised(n, stepMm);
        expect(best.minPowerPct).toBeLessThanOrEqual(setting.powerPct);
        expect(best.unevenness).toBeLessThanOrEqual(equal.unevenness);
      }),
      { seed: 7, numRuns: 25 },
    );
  });
});
