import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerSpeed, oneStepFaster, oneStepSurer } from './answerSpeed.ts';

describe('speeds of an answer', () => {
  it('are rounded down to 0.1 mm/s', () => {
    expect(answerSpeed(16.89)).toBe(16.8);
    expect(answerSpeed(16.8)).toBe(16.8);
  });

  it('step to what people type: 0.5 mm/s, and 0.1 below 5', () => {
    expect(oneStepSurer(16.8)).toBe(15.5); // 15.96 and slower
    expect(oneStepFaster(16.8)).toBe(18); // 17.64 and faster
    expect(oneStepSurer(4.4)).toBe(4.1); // 4.18 and slower
  });

  it('are at least 5 % away, whatever the speed', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 200, noNaN: true }), (speed) => {
        expect(oneStepSurer(speed)).toBeLessThanOrEqual(0.95 * speed + 1e-9);
        expect(oneStepFaster(speed)).toBeGreaterThanOrEqual(1.05 * speed - 1e-9);
        expect(speed - answerSpeed(speed)).toBeGreaterThanOrEqual(-1e-9);
        expect(speed - answerSpeed(speed)).toBeLessThan(0.1 + 1e-9);
      }),
    );
  });
});
