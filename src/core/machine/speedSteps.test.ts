import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestStep, nextStep, stepNotFaster, stepNotSlower } from './speedSteps.ts';

describe('speeds that people type', () => {
  it('go by 0.5 mm/s, by 0.1 below 5', () => {
    expect(nearestStep(17.3)).toBe(17.5);
    expect(nearestStep(3.14)).toBe(3.1);
    expect(stepNotFaster(17.4)).toBe(17);
    expect(stepNotSlower(17.1)).toBe(17.5);
    expect(nextStep(4.9)).toBe(5);
    expect(nextStep(5)).toBe(5.5);
  });

  it('hold the speed between them, and stay where they are', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 150, noNaN: true }), (speed) => {
        expect(stepNotFaster(speed)).toBeLessThanOrEqual(speed + 1e-8);
        expect(stepNotSlower(speed)).toBeGreaterThanOrEqual(speed - 1e-8);
        expect(nearestStep(nearestStep(speed))).toBe(nearestStep(speed));
      }),
    );
  });
});
