import { describe, expect, it } from 'vitest';

import { undescribedMachine, type Machine } from '../machine/machine.ts';
import type { Polyline } from '../path/polyline.ts';
import type { PathLine, Toolpath } from './toolpath.ts';
import { toolpathTime, type ToolpathTime } from './toolpathTime.ts';

const machine: Machine = {
  ...undescribedMachine,
  motion: {
    accelerationMmPerS2: 500,
    corner: { rule: 'speed-jump', xMmPerS: 5, yMmPerS: 5 },
    travelSpeedMmPerS: 100,
    lineDelayS: 0.5,
    jobDelayS: 2,
  },
};
const hundred: Polyline = [
  [0, 0],
  [100, 0],
];
const line = (over: Partial<PathLine> = {}): PathLine => ({
  points: hundred,
  passes: 1,
  where: 1,
  ...over,
});
const told = (speedMmPerS: number, s = 500) => ({
  modal: { speedMmPerS, s, air: false, beam: 'constant' as const },
});
const file = (lines: readonly PathLine[], over: Partial<Toolpath> = {}): Toolpath => ({
  kind: 'gcode',
  lines,
  travels: [],
  noticed: [],
  ...over,
});
const timeOf = (toolpath: Toolpath, speedMmPerS?: number): ToolpathTime => {
  const time = toolpathTime(toolpath, machine, speedMmPerS);
  if (!time.ok) throw new Error(time.problem.code);
  return time.value;
};

describe('the time of a file', () => {
  it('is length over speed and speed over acceleration, with travel and delays (kinematics)', () => {
    const back: Polyline = [
      [100, 50],
      [0, 50],
    ];
    const time = timeOf(file([line(told(20)), line({ points: back, ...told(20) })]));
    expect(time.cuttingS).toBe(10);
    expect(time.cornersS).toBeCloseTo(2 * (20 / 500), 9);
    // 10 mm to rise to 100 mm/s, 10 to fall, 30 between.
    expect(time.travelS).toBeCloseTo(0.5 + 100 / 500, 9);
    expect(time.delaysS).toBe(3);
    expect(time.lowSeconds).toBeLessThan(time.seconds);
  });

  it('runs on without a stop where only the power changes, and stops where the beam goes off', () => {
    const further: Polyline = [
      [100, 0],
      [200, 0],
    ];
    const lines = [line(told(20)), line({ points: further, ...told(20, 300) })];
    const joined = timeOf(file(lines));
    expect(joined.cornersS).toBeCloseTo(20 / 500, 9);
    expect(joined.cuttingS).toBe(10);
    const parted = timeOf(file(lines, { unlit: [{ beforeLine: 1, kind: 'wait', seconds: 1 }] }));
    expect(parted.seconds - joined.seconds).toBeCloseTo(20 / 500 + 1 + 0.5, 9);
  });

  it('plans through S0 inside a feed, as engraving and bridges have it, and stops where the beam is switched off', () => {
    // Twenty strokes of 4 mm, 1 mm dark between, in one row at one feed: 99 mm at 20 mm/s, one start.
    const strokes = Array.from({ length: 20 }, (_, i): PathLine =>
      line({
        points: [
          [5 * i, 0],
          [5 * i + 4, 0],
        ],
        ...told(20),
      }),
    );
    const between = (beam: 'constant' | 'off') =>
      strokes.slice(1).map((_, i) => ({
        beforeLine: i + 1,
        kind: 'travel' as const,
        to: [5 * (i + 1), 0] as const,
        speedMmPerS: 20,
        beam,
      }));
    const through = timeOf(file(strokes, { unlit: between('constant') }));
    expect(through.seconds).toBeCloseTo(99 / 20 + 20 / 500 + 0.5 + 2, 9);
    expect([through.cutMm, through.travelMm]).toEqual([80, 19]);
    expect(through.cuttingS).toBeCloseTo(4, 9);
    const stopping = timeOf(file(strokes, { unlit: between('off') }));
    expect(stopping.delaysS).toBe(2 + 20 * 0.5);
  });

  it('runs several passes of a program in one go', () => {
    const square: Polyline = [
      [0, 0],
      [50, 0],
      [50, 50],
      [0, 50],
      [0, 0],
    ];
    const once = timeOf(file([line({ points: square, ...told(20) })]));
    const thrice = timeOf(file([line({ points: square, passes: 3, ...told(20) })]));
    // A right angle is taken at 5 mm/s by this machine's rule, the two ends from rest.
    const slowing = (from: number): number => (20 - from) ** 2 / (2 * 500 * 20);
    expect(once.cornersS).toBeCloseTo(2 * slowing(0) + 6 * slowing(5), 9);
    expect(thrice.cornersS).toBeCloseTo(2 * slowing(0) + 22 * slowing(5), 9);
    expect(thrice.delaysS).toBe(2.5);
    expect(thrice.cutMm).toBe(600);
  });

  it('tells the time of a job that says that it lights no beam', () => {
    const unlit = [
      {
        beforeLine: 0,
        kind: 'travel' as const,
        to: [100, 0] as const,
        speedMmPerS: 20,
        beam: 'off' as const,
      },
    ];
    const time = timeOf(file([], { unlit, disarmed: true }));
    expect(time.seconds).toBeCloseTo(5 + 20 / 500 + 2, 9);
    expect([time.cutMm, time.travelMm]).toEqual([0, 100]);
  });

  it('takes the way and the speed of travel from the program where it says them', () => {
    const time = timeOf(
      file([line(told(20))], {
        unlit: [
          { beforeLine: 0, kind: 'travel', to: [0, 100] },
          { beforeLine: 0, kind: 'travel', to: [0, 0], speedMmPerS: 10 },
          { beforeLine: 1, kind: 'travel', to: [0, 0] },
        ],
      }),
    );
    expect(time.travelMm).toBe(300);
    expect(time.travelS).toBeCloseTo(2 * (1 + 100 / 500) + 10 + 10 / 500, 9);
    const layers = time.layers.reduce((sum, layer) => sum + layer.seconds, 0);
    expect(layers + 2).toBeCloseTo(time.seconds, 9);
  });

  it('takes speed and passes from the name of a layer, and the given speed for the others', () => {
    const setting = { powerPct: 30, speedMmPerS: 10, passes: 2 };
    const spelt = line({ layer: 'B 10.0mmps 30pct min30 x2', spelt: { label: 'B', setting } });
    const time = timeOf(file([spelt, line({ colour: '#ff0000' })], { kind: 'svg' }), 50);
    expect(time.cuttingS).toBe(22);
    expect(time.layers.map(({ name }) => name)).toEqual(['B', '#ff0000']);
  });

  it('says why there is none', () => {
    expect(toolpathTime(file([]), machine)).toMatchObject({
      ok: false,
      problem: { code: 'time-nothing-cut' },
    });
    expect(toolpathTime(file([line(), line(told(20))]), machine)).toMatchObject({
      ok: false,
      problem: { code: 'time-speed-unknown', params: { lines: 1 } },
    });
  });

  it('has a wide band where nobody knows how the machine moves', () => {
    const time = toolpathTime(file([line(told(20))]), undescribedMachine);
    expect(time.ok && time.value.motion).toBe('assumed');
    expect(time.ok && time.value.highSeconds - time.value.lowSeconds).toBeGreaterThan(3);
  });
});
