import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import type { CornerRule } from './motionValues.ts';
import type { Point } from '../path/point.ts';
import { placed, type Polyline } from '../path/polyline.ts';
import { planPath, type MotionLimits } from './planPath.ts';

const square: Polyline = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
  [0, 0],
];
const deviation: CornerRule = { rule: 'junction-deviation', deviationMm: 0.02 };
const jump: CornerRule = { rule: 'speed-jump', xMmPerS: 8, yMmPerS: 8 };
const limits: MotionLimits = { speedMmPerS: 40, accelerationMmPerS2: 800, corner: jump };

// In hundredths of a mm, so that repeated points, reversals and straight-on corners come up.
const coordinate = fc.integer({ min: -4000, max: 4000 }).map((hundredths) => hundredths / 100);
const line = fc.array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 30 });
const anyLimits = fc.record({
  speedMmPerS: fc.double({ min: 1, max: 200, noNaN: true }),
  accelerationMmPerS2: fc.double({ min: 50, max: 5000, noNaN: true }),
  corner: fc.constantFrom(deviation, jump),
});

describe('the plan of a line', () => {
  it('has the corners and the time of a 10 mm square under a speed jump of 8 mm/s (kinematics)', () => {
    // Each side: 8 → 40 → 8 mm/s at 800 mm/s²; the first and last from and to rest.
    const plan = planPath(square, limits);
    expect([...plan.speedMmPerS]).toEqual([0, 8, 8, 8, 0]);
    expect(plan.seconds).toBeCloseTo(1.146, 12);
    expect(plan.lengthMm).toBe(40);
  });

  it('is as fast as a fine sweep over single points allows, within the sweep’s own error', () => {
    fc.assert(
      fc.property(line, anyLimits, (points, asked) => {
        const plan = planPath(points, asked);
        if (plan.lengthMm < 1) return;
        const swept = sweptSeconds(points, asked, plan.cornerMmPerS);
        expect(Math.abs(plan.seconds / swept - 1)).toBeLessThan(0.01);
      }),
      { numRuns: 40 },
    );
  });

  it('never passes a corner, changes its speed or runs faster than it may', () => {
    fc.assert(
      fc.property(line, anyLimits, (points, asked) => {
        const plan = planPath(points, asked);
        plan.speedMmPerS.forEach((speed, i) => {
          expect(speed).toBeLessThanOrEqual(plan.cornerMmPerS[i] ?? 0);
          const next = plan.speedMmPerS[i + 1] ?? speed;
          const change = Math.abs(next * next - speed * speed);
          const most = 2 * asked.accelerationMmPerS2 * (plan.segmentMm[i] ?? 0);
          expect(change).toBeLessThanOrEqual(most * (1 + 1e-9) + 1e-9);
          expect(plan.peakMmPerS[i] ?? 0).toBeLessThanOrEqual(asked.speedMmPerS);
        });
        expect(plan.seconds).toBeGreaterThanOrEqual(
          (plan.lengthMm / asked.speedMmPerS) * (1 - 1e-12),
        );
      }),
    );
  });

  it('takes as long backwards, as long in inches, and less with more acceleration', () => {
    fc.assert(
      fc.property(line, anyLimits, (points, asked) => {
        const { seconds } = planPath(points, asked);
        expect(planPath(points.toReversed(), asked).seconds).toBeCloseTo(seconds, 6);
        const { speedMmPerS, accelerationMmPerS2, corner } = asked;
        const inches = planPath(placed(points, [0, 0], 1 / 25.4), {
          speedMmPerS: speedMmPerS / 25.4,
          accelerationMmPerS2: accelerationMmPerS2 / 25.4,
          corner: inInches(corner),
        });
        expect(inches.seconds).toBeCloseTo(seconds, 6);
        const quicker = planPath(points, {
          ...asked,
          accelerationMmPerS2: 2 * accelerationMmPerS2,
        });
        expect(quicker.seconds).toBeLessThanOrEqual(seconds * (1 + 1e-9));
      }),
    );
  });

  it('does not mind repeated points, points on the way, nor points a hair apart', () => {
    fc.assert(
      fc.property(line, anyLimits, (points, asked) => {
        const { seconds } = planPath(points, asked);
        const repeated = points.flatMap((point): Point[] => [point, point]);
        expect(planPath(repeated, asked).seconds).toBeCloseTo(seconds, 9);
        const hair = points.flatMap(([x, y]): Point[] => [
          [x, y],
          [x - 1e-9, y + 1e-9],
        ]);
        expect(planPath(hair, asked).seconds).toBeCloseTo(seconds, 5);
      }),
    );
    const halves = square.flatMap(([x, y], i): Point[] => {
      const [nextX, nextY] = square[i + 1] ?? [x, y];
      return [
        [x, y],
        [(x + nextX) / 2, (y + nextY) / 2],
      ];
    });
    expect(planPath(halves, limits).seconds).toBeCloseTo(1.146, 12);
  });

  it('is nothing for no line, one point, or a line of one point many times', () => {
    for (const points of [
      [],
      [[1, 2]],
      [
        [1, 2],
        [1, 2],
        [1, 2],
      ],
    ] as Polyline[]) {
      expect(planPath(points, limits)).toMatchObject({ seconds: 0, lengthMm: 0 });
    }
  });

  it('comes to rest where it turns back, and takes limits that are none', () => {
    const back: Polyline = [
      [0, 0],
      [7, 3],
      [0, 0],
    ];
    expect(planPath(back, { ...limits, corner: deviation }).speedMmPerS[1]).toBe(0);
    const free = { speedMmPerS: 20, accelerationMmPerS2: Infinity, corner: deviation };
    expect(planPath(square, free).seconds).toBeCloseTo(2, 12);
    const endless = planPath(square, { ...limits, speedMmPerS: Infinity });
    expect(endless.seconds).toBeGreaterThan(0);
    expect(endless.seconds).toBeLessThan(1.146);
  });
});

const inInches = (rule: CornerRule): CornerRule =>
  rule.rule === 'junction-deviation'
    ? { ...rule, deviationMm: rule.deviationMm / 25.4 }
    : { ...rule, xMmPerS: rule.xMmPerS / 25.4, yMmPerS: rule.yMmPerS / 25.4 };

/**
 * The same plan by brute force: a speed limit at each of many points along the line, swept forward and back, then ds/v.
 * It knows nothing of trapezoids or segments.
 */
const sweptSeconds = (
  points: Polyline,
  { speedMmPerS, accelerationMmPerS2: a }: MotionLimits,
  corners: Float64Array,
): number => {
  const squares: number[] = [];
  const steps: number[] = [];
  points.forEach(([x, y], i) => {
    squares.push((corners[i] ?? 0) ** 2);
    const next = points[i + 1];
    if (next === undefined) return;
    const length = Math.hypot(next[0] - x, next[1] - y);
    const pieces = 2 + Math.ceil(length / 0.002);
    for (let k = 1; k < pieces; k += 1) squares.push(speedMmPerS ** 2);
    for (let k = 0; k < pieces; k += 1) steps.push(length / pieces);
  });
  for (let i = 1; i < squares.length; i += 1) {
    squares[i] = Math.min(squares[i] ?? 0, (squares[i - 1] ?? 0) + 2 * a * (steps[i - 1] ?? 0));
  }
  for (let i = squares.length - 2; i >= 0; i -= 1) {
    squares[i] = Math.min(squares[i] ?? 0, (squares[i + 1] ?? 0) + 2 * a * (steps[i] ?? 0));
  }
  return steps.reduce((sum, step, i) => {
    const mean = (Math.sqrt(squares[i] ?? 0) + Math.sqrt(squares[i + 1] ?? 0)) / 2;
    return sum + (mean === 0 ? 0 : step / mean);
  }, 0);
};
