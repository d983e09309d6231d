import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { Polyline } from '../path/polyline.ts';
import { planPath, type MotionLimits } from './planPath.ts';
import { speedAlong, speedAt } from './speedAlong.ts';

const limits: MotionLimits = {
  speedMmPerS: 40,
  accelerationMmPerS2: 800,
  corner: { rule: 'speed-jump', xMmPerS: 8, yMmPerS: 8 },
};
const elbow: Polyline = [
  [0, 0],
  [10, 0],
  [10, 10],
];
const coordinate = fc.integer({ min: -400, max: 400 }).map((tenths) => tenths / 10);
const line = fc.array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 20 });

describe('speed along a line', () => {
  it('is √(2as) from rest, and the corner’s speed at the corner (kinematics)', () => {
    const along = speedAlong(planPath(elbow, limits));
    expect(speedAt(along, 0)).toBe(0);
    expect(speedAt(along, 0.25)).toBeCloseTo(20, 9);
    expect(speedAt(along, 1)).toBeCloseTo(40, 9);
    expect(speedAt(along, 5)).toBe(40);
    expect(speedAt(along, 10)).toBeCloseTo(8, 9);
    expect(speedAt(along, 20)).toBe(0);
    expect(speedAt(along, 99)).toBe(0);
  });

  it('takes the planned time when ds/v is summed up, and never leaves its limits', () => {
    fc.assert(
      fc.property(line, (points) => {
        const plan = planPath(points, limits);
        const along = speedAlong(plan);
        expect(along.seconds).toBeCloseTo(plan.seconds, 9);
        expect(along.lengthMm).toBeCloseTo(plan.lengthMm, 9);
        let seconds = 0;
        along.atMm.forEach((mm, i) => {
          const before = along.atMm[i - 1] ?? mm;
          const [slow, fast] = [along.speedMmPerS[i - 1] ?? 0, along.speedMmPerS[i] ?? 0];
          if (mm > before) seconds += (2 * (mm - before)) / (slow + fast);
          expect(fast).toBeLessThanOrEqual(40);
          expect(mm).toBeGreaterThanOrEqual(before);
        });
        expect(seconds).toBeCloseTo(plan.seconds, 6);
      }),
    );
  });

  it('jumps where acceleration knows no limit', () => {
    const along = speedAlong(planPath(elbow, { ...limits, accelerationMmPerS2: Infinity }));
    expect(along.seconds).toBeCloseTo(0.5, 12);
    expect(speedAt(along, 5)).toBe(40);
    expect(speedAt(along, 10.5)).toBe(40);
  });

  it('is nothing along nothing', () => {
    const along = speedAlong(planPath([], limits));
    expect([...along.atMm]).toEqual([0]);
    expect(speedAt(along, 0)).toBe(0);
  });
});
