import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { cornerSpeed, turnRad } from './cornerSpeed.ts';

const deviation = { rule: 'junction-deviation', deviationMm: 0.05 } as const;
const jump = { rule: 'speed-jump', xMmPerS: 10, yMmPerS: 5 } as const;
const at = (rad: number): readonly [number, number] => [Math.cos(rad), Math.sin(rad)];
const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });

describe('the speed round a corner', () => {
  it('is what the closed form gives at a right angle: v² = a·δ·(√½)/(1 − √½)', () => {
    const expected = Math.sqrt((1000 * 0.05 * Math.SQRT1_2) / (1 - Math.SQRT1_2));
    expect(cornerSpeed(deviation, 1000, 1, 0, 0, 1)).toBeCloseTo(expected, 10);
    // x jumps by v, y by v: the tighter axis decides.
    expect(cornerSpeed(jump, 1000, 1, 0, 0, 1)).toBe(5);
  });

  it('has no limit straight on, and the reversal is 0 or half the jump', () => {
    expect(cornerSpeed(deviation, 1000, 0.6, 0.8, 0.6, 0.8)).toBe(Infinity);
    expect(cornerSpeed(jump, 1000, 0.6, 0.8, 0.6, 0.8)).toBe(Infinity);
    expect(cornerSpeed(deviation, 1000, 0.6, 0.8, -0.6, -0.8)).toBe(0);
    expect(cornerSpeed(jump, 1000, 1, 0, -1, 0)).toBe(5);
    expect(turnRad(1, 0, 1, 0)).toBe(0);
    expect(turnRad(1, 0, -1, 0)).toBe(Math.PI);
  });

  it('under junction deviation depends on the turn alone, and falls as the turn grows', () => {
    fc.assert(
      fc.property(angle, angle, angle, (from, turn, more) => {
        const speed = (start: number, by: number): number =>
          cornerSpeed(deviation, 800, ...at(start), ...at(start + by));
        const [small, large] = [turn, more].sort((a, b) => Math.abs(a) - Math.abs(b));
        if (small === undefined || large === undefined || Math.abs(small) < 1e-4) return;
        expect(speed(from, small) / speed(0, small)).toBeCloseTo(1, 5);
        expect(speed(from, large)).toBeLessThanOrEqual(speed(from, small) * (1 + 1e-6) + 1e-6);
      }),
    );
  });

  it('under a speed jump keeps every axis within its figure, one of them fully used', () => {
    fc.assert(
      fc.property(angle, angle, (from, to) => {
        const [into, out] = [at(from), at(to)];
        const speed = cornerSpeed(jump, 800, ...into, ...out);
        if (speed === Infinity) return;
        const used = [
          (speed * Math.abs(out[0] - into[0])) / 10,
          (speed * Math.abs(out[1] - into[1])) / 5,
        ];
        expect(Math.max(...used)).toBeCloseTo(1, 9);
      }),
    );
  });
});
