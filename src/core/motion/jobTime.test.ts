import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { MotionValues } from './motionValues.ts';
import type { Point } from '../path/point.ts';
import type { Polyline } from '../path/polyline.ts';
import { jobTime, wholeJobTime, type JobMove } from './jobTime.ts';

const motion: MotionValues = {
  accelerationMmPerS2: 800,
  corner: { rule: 'speed-jump', xMmPerS: 8, yMmPerS: 8 },
  travelSpeedMmPerS: 200,
  travelAccelerationMmPerS2: 2000,
  lineDelayS: 0.1,
  jobDelayS: 3,
};
const square: Polyline = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
  [0, 0],
];
const cut = (points: Polyline, passes = 1): JobMove => ({
  kind: 'cut',
  points,
  speedMmPerS: 40,
  passes,
});

describe('the time of a job', () => {
  it('is told by where it goes: a 10 mm square in 1.146 s, of which 1 s is length over speed (kinematics)', () => {
    const time = wholeJobTime([cut(square, 2)], motion);
    expect(time.cuttingS).toBe(2);
    expect(time.cornersS).toBeCloseTo(0.292, 12);
    expect(time.delaysS).toBeCloseTo(3.2, 12);
    expect(time.travelS).toBe(0);
    expect(time.cutMm).toBe(80);
  });

  it('counts travel to the first point and between lines: s/v + v/a', () => {
    const far = square.map(([x, y]): Point => [x + 60, y + 80]);
    const time = jobTime([cut(far), cut(square)], motion);
    expect(time.travelMm).toBe(200);
    expect(time.travelS).toBeCloseTo(2 * (100 / 200 + 200 / 2000), 12);
    expect(time.at).toEqual([0, 0]);
  });

  it('feeds without the beam at the speed that a program says, and waits where it waits', () => {
    const time = jobTime(
      [
        { kind: 'travel', to: [100, 0], speedMmPerS: 10 },
        { kind: 'wait', seconds: 1.5 },
      ],
      motion,
    );
    expect(time.travelS).toBeCloseTo(100 / 10 + 10 / 800, 12);
    expect(time.delaysS).toBe(1.5);
  });

  it('comes back on the second pass of an open line', () => {
    const open: Polyline = [
      [0, 0],
      [10, 0],
    ];
    expect(jobTime([cut(open, 2)], motion).at).toEqual([0, 0]);
    expect(jobTime([cut(open, 3)], motion).at).toEqual([10, 0]);
  });

  it('is the sum of its parts, however it is parted', () => {
    const coordinate = fc.integer({ min: 0, max: 3000 }).map((tenths) => tenths / 10);
    const line = fc.array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(fc.array(line, { minLength: 2, maxLength: 6 }), (lines) => {
        const moves = lines.map((points) => cut(points));
        const whole = jobTime(moves, motion);
        const first = jobTime(moves.slice(0, 1), motion);
        const rest = jobTime(moves.slice(1), motion, first.at);
        expect(first.seconds + rest.seconds).toBeCloseTo(whole.seconds, 9);
        const { cuttingS, cornersS, travelS, delaysS } = whole;
        expect(cuttingS + cornersS + travelS + delaysS).toBeCloseTo(whole.seconds, 9);
        expect(cornersS).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });
});
