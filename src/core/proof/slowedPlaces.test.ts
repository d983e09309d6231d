import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { shapeOutline } from '../card/testShapes.ts';
import { undescribedMachine, type Machine } from '../machine/machine.ts';
import type { MotionValues } from '../motion/motionValues.ts';
import type { Setting } from '../machine/setting.ts';
import { beamAlong } from '../../../test/reference/beamAlong.ts';
import { planPath } from '../motion/planPath.ts';
import { speedAlong } from '../motion/speedAlong.ts';
import { isClosed, type Polyline } from '../path/polyline.ts';
import { beamWork, type BeamWork } from './beamWork.ts';
import { lineInTime, type LineInTime } from './lineInTime.ts';
import { burnsAtRatio, equivalentSpeed, verdictsOn } from './placeVerdict.ts';
import { blurMm, marginChangeOf, slowedPlaces, type SlowedPlace } from './slowedPlaces.ts';

const motion: MotionValues = {
  accelerationMmPerS2: 800,
  corner: { rule: 'speed-jump', xMmPerS: 6, yMmPerS: 6 },
  travelSpeedMmPerS: 200,
};

const walked = (
  points: Polyline,
  setting: Setting,
  change: Partial<MotionValues> = {},
  machine: Partial<Machine> = {},
): { line: LineInTime; work: BeamWork; places: readonly SlowedPlace[] } => {
  const work = beamWork({ ...undescribedMachine, ...machine }, setting);
  if (work === null) throw new Error('the tube is not known');
  const limits = { ...motion, ...change, speedMmPerS: setting.speedMmPerS };
  const loops = isClosed(points);
  const line = lineInTime(speedAlong(planPath(points, limits)), work, loops);
  return { line, work, places: slowedPlaces(line, work, 1, loops) };
};

const corner: Polyline = [
  [0, 0],
  [30, 0],
  [30, 30],
];
const setting: Setting = { powerPct: 40, speedMmPerS: 40, passes: 1 };

describe('slowed places', () => {
  it('are the two ends and the corner, slowed over the braking length v²/2a (elementary kinematics)', () => {
    const { places } = walked(corner, setting);
    expect(places.map(({ kind, atMm }) => [kind, atMm])).toEqual([
      ['end', 0],
      ['corner', 30],
      ['end', 60],
    ]);
    // A right angle under a jump of 6 mm/s an axis is taken at 6 mm/s; 38 mm/s is reached (38² − 6²)/1600 mm later.
    expect(places[1]?.leastMmPerS).toBeCloseTo(6, 9);
    expect(places[1]?.toMm).toBeCloseTo(30 + (38 * 38 - 36) / 1600, 6);
    expect(places[0]?.toMm).toBeCloseTo((38 * 38) / 1600, 6);
  });

  it('weigh mean power against mean speed: with power in step with speed b = 1 changes nothing', () => {
    const { places } = walked(corner, { ...setting, minPowerPct: 0 });
    // Mean power over time is mean speed over time only within one stretch of even acceleration.
    for (const place of places) expect(Math.abs(place.marginChange)).toBeLessThan(1e-6);
  });

  it('with equal powers never cut less than the straight, and so never come out weak', () => {
    const size = fc.double({ min: 3, max: 40, noNaN: true });
    const speed = fc.double({ min: 4, max: 60, noNaN: true });
    fc.assert(
      fc.property(size, speed, (sizeMm, speedMmPerS) => {
        const { places } = walked(shapeOutline('star', sizeMm), { ...setting, speedMmPerS });
        for (const place of places) expect(place.marginChange).toBeGreaterThanOrEqual(-1e-9);
      }),
      { numRuns: 40 },
    );
  });

  it('are weaker the lower the power in corners, and hotter the higher it is', () => {
    const star = shapeOutline('star', 30);
    const at = (minPowerPct: number): readonly SlowedPlace[] =>
      walked(star, { ...setting, minPowerPct }).places;
    const [low, high] = [at(8), at(30)];
    expect(low).toHaveLength(high.length);
    low.forEach((place, i) => {
      expect(place.marginChange).toBeLessThan(high[i]?.marginChange ?? 0);
      expect(place.energyRatio).toBeLessThan(high[i]?.energyRatio ?? 0);
    });
  });

  it('meet at the seam of a loop: its start and its end are one place', () => {
    const square: Polyline = [
      [0, 0],
      [30, 0],
      [30, 30],
      [0, 30],
      [0, 0],
    ];
    const { places } = walked(square, setting);
    expect(places.map(({ kind }) => kind)).toEqual(['end', 'corner', 'corner', 'corner']);
    expect(places[0]?.fromMm).toBeCloseTo(-(38 * 38) / 1600, 6);
  });

  it('has as much energy on a stretch as the beam along the line says', () => {
    const star = shapeOutline('star', 30);
    const set = { ...setting, minPowerPct: 17 };
    const machine = { ...undescribedMachine, powerRampStartMmPerS: 9 };
    const { line, work } = walked(star, set, {}, machine);
    const plan = planPath(star, { ...motion, speedMmPerS: 40 });
    const beam = beamAlong(plan, machine, set);
    const at = fc.double({ min: 0, max: line.lengthMm - 0.5, noNaN: true });
    fc.assert(
      fc.property(at, (from) => {
        const { workS, lengthMm } = line.over(from, from + 0.5);
        const ratio = (workS * work.setMmPerS) / lengthMm;
        expect(ratio / (beam?.energyRatioBetween(from, from + 0.5) ?? 0)).toBeCloseTo(1, 3);
      }),
    );
  });
});

// Common practice, no source, both: tips of stars burn where the power in corners is the power at full speed on a machine
// that slows a lot; with low power in corners the corners stay in the sheet.
describe('facts of the trade', () => {
  const slow: Partial<MotionValues> = {
    accelerationMmPerS2: 300,
    corner: { rule: 'speed-jump', xMmPerS: 2, yMmPerS: 2 },
  };
  const limits = { setMmPerS: 30, holdsMmPerS: 30, halfOutMmPerS: 34, burnsAtRatio };
  const star = shapeOutline('star', 30);

  it('overburn on the tips of a star with equal power at full speed and in corners', () => {
    const { places } = walked(star, { ...setting, speedMmPerS: 30 }, slow);
    const burnt = places.filter((place) => verdictsOn(place, limits).includes('tips-burn'));
    expect(burnt.length).toBeGreaterThanOrEqual(5);
    expect(places.flatMap((place) => verdictsOn(place, limits))).not.toContain('not-through');
  });

  it('not through at corners where the power in corners is low', () => {
    const low = { ...setting, speedMmPerS: 30, minPowerPct: 10 };
    const { places } = walked(star, low, slow, { powerRampStartMmPerS: 20 });
    const verdicts = places.map((place) => verdictsOn(place, limits));
    expect(verdicts.filter((found) => found.includes('not-through')).length).toBeGreaterThan(4);
  });
});

describe('the verdict on a place', () => {
  const limits = { setMmPerS: 20, holdsMmPerS: 21, halfOutMmPerS: 24, burnsAtRatio: 2.5 };
  const on = (marginChange: number, energyRatio = 1) =>
    verdictsOn({ marginChange, energyRatio }, limits);

  it('holds the equivalent speed against what holds and what half come out at', () => {
    expect(equivalentSpeed(20, Math.log(20 / 22))).toBeCloseTo(22, 9);
    expect(on(Math.log(20 / 20.9))).toEqual([]);
    expect(on(Math.log(20 / 22))).toEqual(['may-hang']);
    expect(on(Math.log(20 / 25))).toEqual(['not-through']);
    expect(on(0, 2.6)).toEqual(['tips-burn']);
  });

  it('says nothing of weak places that are no weaker than the straight, however little holds', () => {
    expect(verdictsOn({ marginChange: 0, energyRatio: 1 }, { ...limits, holdsMmPerS: 5 })).toEqual(
      [],
    );
  });

  it('never gets milder as a place gets weaker', () => {
    const change = fc.double({ min: -1, max: 1, noNaN: true });
    const rank = (value: number): number =>
      ['not-through', 'may-hang'].findIndex((verdict) => on(value).some((one) => one === verdict));
    const severity = (value: number): number => (rank(value) < 0 ? 0 : 2 - rank(value));
    fc.assert(
      fc.property(change, change, (a, b) => {
        const [weak, strong] = a < b ? [a, b] : [b, a];
        expect(severity(weak)).toBeGreaterThanOrEqual(severity(strong));
      }),
    );
    expect(marginChangeOf({ powerShare: 0.5, speedShare: 0.5 }, 1)).toBeCloseTo(0, 12);
    expect(blurMm).toBe(0.2);
  });
});
