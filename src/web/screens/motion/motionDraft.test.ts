import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MotionValues } from '../../../core/motion/motionValues.ts';
import { machineShape } from '../../../formats/saved/machine.ts';
import { draftOf, motionOf } from './motionDraft.ts';

const fitted: MotionValues = {
  accelerationMmPerS2: 900,
  corner: { rule: 'junction-deviation', deviationMm: 0.02 },
  travelSpeedMmPerS: 240,
  lineDelayS: 0.03,
  timeErrorPct: 1.2,
};

describe('how a machine moves, as typed', () => {
  it('is nothing while a figure is missing', () => {
    expect(motionOf({ rule: 'speed-jump' }, undefined)).toBeUndefined();
    expect(
      motionOf({ rule: 'speed-jump', accelerationMmPerS2: 800, xMmPerS: 6 }, undefined),
    ).toBeUndefined();
  });

  it('takes one figure of a jump for both axes', () => {
    const typed = { accelerationMmPerS2: 800, yMmPerS: 6, travelSpeedMmPerS: 200 };
    expect(motionOf({ rule: 'speed-jump', ...typed }, undefined)?.corner).toEqual({
      rule: 'speed-jump',
      xMmPerS: 6,
      yMmPerS: 6,
    });
  });

  it('keeps the delays of a fit but not how well it fitted', () => {
    expect(motionOf({ ...draftOf(fitted), accelerationMmPerS2: 700 }, fitted)).toEqual({
      accelerationMmPerS2: 700,
      corner: fitted.corner,
      travelSpeedMmPerS: 240,
      lineDelayS: 0.03,
    });
  });

  it('is never what cannot be stored', () => {
    const figure = fc.option(fc.double({ min: -10, max: 1e7, noNaN: true }), { nil: undefined });
    const draft = fc.record({
      rule: fc.constantFrom('speed-jump' as const, 'junction-deviation' as const),
      accelerationMmPerS2: figure,
      deviationMm: figure,
      xMmPerS: figure,
      yMmPerS: figure,
      travelSpeedMmPerS: figure,
    });
    fc.assert(
      fc.property(draft, (typed) => {
        const motion = motionOf(typed, undefined);
        const machine = { maxPowerPct: 100, speedRangeMmPerS: [1, 100], motion };
        expect(motion === undefined || machineShape.safeParse(machine).success).toBe(true);
      }),
    );
  });
});
