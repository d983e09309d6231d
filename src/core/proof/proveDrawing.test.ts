import { problemOf } from '../problem.ts';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';

import { shapeOutline } from '../card/testShapes.ts';
import type { CutStudy } from '../cutmodel/cutStudy.ts';
import { decisionOn } from '../cutmodel/decisionOn.ts';
import { fit, type Fit } from '../cutmodel/fit.ts';
import type { MotionValues } from '../motion/motionValues.ts';
import type { Setting } from '../machine/setting.ts';
import { omit } from '../omit.ts';
import { closed, lengthMm, placed, type Polyline } from '../path/polyline.ts';
import { promiseForParts } from './promiseForParts.ts';
import { proofStages, proveDrawing, type DrawingProof, type ProofStage } from './proveDrawing.ts';

const motion: MotionValues = {
  accelerationMmPerS2: 300,
  corner: { rule: 'speed-jump', xMmPerS: 2, yMmPerS: 2 },
  travelSpeedMmPerS: 150,
};

/** A ladder at 30 %: all out up to 20 mm/s, none from 25. */
const study: CutStudy = {
  machine: { maxPowerPct: 90, speedRangeMmPerS: [1, 100], motion, powerRampStartMmPerS: 12 },
  stock: { material: 'plywood', thicknessMm: 3 },
  cells: [12, 14, 16, 18, 19, 20, 21, 22, 23, 24, 25, 28].flatMap((speedMmPerS, i) =>
    [0, 1].map(() => ({
      powerPct: 30,
      speedMmPerS,
      passes: 1,
      grade: i < 6 ? ('out' as const) : i < 9 ? ('hangs' as const) : ('stays' as const),
    })),
  ),
  tallies: [],
  promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
  ask: { powerPct: 30 },
};

let fitted: Fit;
beforeAll(() => {
  fitted = fit(study);
});

const setting: Setting = { powerPct: 30, speedMmPerS: 16, passes: 1 };
const star = (x: number, y: number, sizeMm = 30): Polyline =>
  placed(shapeOutline('star', sizeMm), [x, y]);
const sheet = Array.from({ length: 40 }, (_, i) => star(40 * (i % 8), 40 * Math.floor(i / 8)));

const proof = (paths: readonly Polyline[], change: Partial<Setting> = {}): DrawingProof =>
  proveDrawing({
    lines: paths.map((points) => ({ points, passes: 1 })),
    setting: { ...setting, ...change },
    fitted,
  });

describe('the promise carried to a drawing', () => {
  it('is the promise of the reference shape for parts of its length that lose nothing anywhere', () => {
    const alike = Array.from({ length: 200 }, () => ({ cutMm: 60, marginChange: 0.3 }));
    const promise = promiseForParts(fitted, setting, alike);
    const [kind] = promise?.kinds ?? [];
    expect(kind?.count).toBe(200);
    expect(kind?.outOf100Mean).toBeCloseTo(100 * fitted.decision.shareAt(30, 16), 9);
    expect(kind?.surePct).toBeCloseTo(100 * fitted.decision.sureAt(30, 16), 9);
    // The count goes by a sheet for each point, which is good to a tenth of a part in 200.
    const mean = 200 * (1 - fitted.decision.shareAt(30, 16));
    expect(promise?.needKnife.mean).toBeCloseTo(mean, 0);
    expect(promise?.needKnife.low).toBeLessThanOrEqual(mean);
    expect(promise?.needKnife.high).toBeGreaterThanOrEqual(mean);
    // 24 cells without a flaw do not tell how many flaws there are.
    expect(promise?.meetFlaw).toBeUndefined();
  });

  it('takes each part by its own length and its weakest place, as the cut model has them', () => {
    const promise = promiseForParts(fitted, setting, [{ cutMm: 400, marginChange: -0.1 }]);
    const speed = 16 * Math.exp(0.1);
    const own = decisionOn(fitted.compiled, fitted.posterior, {
      ...study.promise,
      partLengthMm: 400,
    });
    expect(promise?.kinds[0]?.outOf100Mean).toBeCloseTo(100 * own.shareAt(30, speed), 9);
    expect(promise?.kinds[0]?.surePct).toBeCloseTo(100 * own.sureAt(30, speed), 9);
  });

  it('never gets better for longer parts, weaker places or more of them', () => {
    const length = fc.double({ min: 10, max: 2000, noNaN: true });
    const change = fc.double({ min: -0.4, max: 0.2, noNaN: true });
    const knives = (cutMm: number, marginChange: number, count = 20): number =>
      promiseForParts(
        fitted,
        setting,
        Array.from({ length: count }, () => ({ cutMm, marginChange })),
      )?.needKnife.mean ?? Number.NaN;
    fc.assert(
      fc.property(length, length, change, change, (l0, l1, c0, c1) => {
        const worse = knives(Math.max(l0, l1), Math.min(c0, c1));
        expect(worse).toBeGreaterThanOrEqual(knives(Math.min(l0, l1), Math.max(c0, c1)) - 1e-9);
        expect(knives(l0, c0, 40)).toBeCloseTo(2 * knives(l0, c0), 9);
      }),
      { numRuns: 6 },
    );
  });
});

describe('a proof on the drawing', () => {
  it('tells the stars, their time and their promise', () => {
    const { drawing, time, motion: by, promise, places, picture } = proof(sheet);
    expect(drawing).toMatchObject({ lines: 40, parts: 40, openLines: 0 });
    expect(by).toBe('known');
    expect(time.lowSeconds).toBeLessThan(time.seconds);
    // Never faster than all of it at the set speed.
    expect(time.seconds).toBeGreaterThan(drawing.cutMm / 16);
    expect(promise?.parts).toBe(40);
    // Seven tips and seven notches each, one of them the seam.
    expect(places.slowed).toBe(40 * 14);
    expect(picture.lines).toHaveLength(40);
  });

  // Common practice, no source, both.
  it('says that tips burn with equal powers, and that corners stay with little power in them', () => {
    const equal = proof(sheet, { speedMmPerS: 18 });
    expect(equal.places.withVerdict['not-through'] + equal.places.withVerdict['may-hang']).toBe(0);
    expect(equal.places.withVerdict['tips-burn']).toBeGreaterThan(0);
    const low = proof(sheet, { speedMmPerS: 18, minPowerPct: 6 });
    expect(low.places.withVerdict['not-through']).toBeGreaterThan(40);
    expect(low.places.withVerdict['tips-burn']).toBe(0);
    expect(low.promise?.needKnife.mean).toBeGreaterThan((equal.promise?.needKnife.mean ?? 0) + 5);
    expect(low.places.groups[0]?.verdict).toBe('not-through');
    expect(low.picture.marks[0]?.number).toBe(1);
  });

  it('recommends a power in corners that leaves no place weak and the energy more even', () => {
    const { corners } = proof(sheet, { minPowerPct: 6 });
    if (corners === undefined || corners.rampStart === 'unknown') throw new Error('no advice');
    const { best, equal, now } = corners;
    expect(equal.minPowerPct).toBe(30);
    expect(now.minPowerPct).toBe(6);
    expect(best.unevenness).toBeLessThanOrEqual(equal.unevenness);
    expect(best.hottestRatio).toBeLessThan(equal.hottestRatio);
    const after = proof(sheet, { minPowerPct: best.minPowerPct });
    const { withVerdict } = after.places;
    expect(withVerdict['not-through'] + withVerdict['may-hang']).toBe(0);
  });

  it('has no figure for the power in corners while nobody knows where the ramp starts', () => {
    const machine = omit(study.machine, 'powerRampStartMmPerS');
    const advice = proveDrawing({
      lines: sheet.map((points) => ({ points, passes: 1 })),
      setting: { ...setting, minPowerPct: 10 },
      fitted: fit({ ...study, machine }),
    }).corners;
    expect(advice).toEqual({
      rampStart: 'unknown',
      nowPct: 10,
      places: expect.any(Number) as number,
    });
  });

  it('says once that the whole path runs on the power in corners, and counts it against the parts', () => {
    const slow = { speedMmPerS: 4, minPowerPct: 12 };
    const whole = proof(sheet, slow);
    expect(whole.remarks.map(({ code }) => code)).toContain('proof-below-start-speed');
    expect(whole.promise?.kinds[0]?.marginChange).toBeLessThan(Math.log(0.5));
    expect(proof(sheet, { speedMmPerS: 4 }).remarks).toEqual([]);
  });

  it('counts runs that never get up to speed: short teeth', () => {
    const teeth: Polyline = closed([
      ...Array.from({ length: 60 }, (_, i): readonly [number, number] => [
        1.2 * Math.floor(i / 2),
        (i + 1) % 4 < 2 ? 0 : 1.2,
      ]),
      [35.4, -20],
      [0, -20],
    ]);
    const { neverAtSpeed } = proof([teeth], { speedMmPerS: 40 });
    expect(neverAtSpeed?.runs).toBeGreaterThan(40);
    expect(neverAtSpeed?.fastestMmPerS).toBeLessThan(36);
    expect(
      proof([
        closed([
          [0, 0],
          [90, 0],
          [90, 90],
        ]),
      ]).neverAtSpeed,
    ).toBeUndefined();
  });

  it('promises nothing where the study recommends nothing, and still tells the drawing', () => {
    const reason = problemOf('nothing-read-yet');
    const told: ProofStage[] = [];
    const bare = proveDrawing(
      { lines: [{ points: star(0, 0), passes: 1 }], setting, fitted, noPromise: reason },
      (stage) => told.push(stage),
    );
    expect(bare.promise).toBeUndefined();
    expect(bare.noPromise).toEqual(reason);
    expect(bare.limits.holdsMmPerS).toBeUndefined();
    expect(bare.places.slowed).toBe(14);
    expect(told).toEqual(proofStages);
  });

  it('says the same of a drawing wherever it lies on the bed', () => {
    const moved = proof(sheet.map((line) => placed(line, [137.3, -41.9])));
    const { promise, places } = proof(sheet);
    expect(moved.places.withVerdict).toEqual(places.withVerdict);
    expect(moved.promise?.needKnife.mean).toBeCloseTo(promise?.needKnife.mean ?? 0, 6);
  });

  it('draws every slowed place so long that it is seen, however short it is and large the sheet', () => {
    // 30 squares on 600 mm, on a machine so quick that a corner slows it over less than a millimetre.
    const squares = Array.from({ length: 30 }, (_, i): Polyline => {
      const [x, y] = [100 * (i % 6), 80 * Math.floor(i / 6)];
      return closed([
        [x, y],
        [x + 40, y],
        [x + 40, y + 40],
        [x, y + 40],
      ]);
    });
    const { picture, places } = proof(squares);
    expect(places.slowed).toBe(120);
    expect(picture.stretches).toHaveLength(120);
    const size = picture.box.rightMm - picture.box.leftMm;
    for (const { points } of picture.stretches) expect(lengthMm(points)).toBeGreaterThan(size / 75);
  });

  it('gives a big sheet a picture that a page can carry', () => {
    const ring = (x: number, y: number): Polyline =>
      closed(
        Array.from({ length: 40 }, (_, i) => [
          x + 3 * Math.cos((2 * Math.PI * i) / 40),
          y + 3 * Math.sin((2 * Math.PI * i) / 40),
        ]),
      );
    const rings = Array.from({ length: 3000 }, (_, i) =>
      ring(8 * (i % 100), 8 * Math.floor(i / 100)),
    );
    const { picture, drawing } = proof(rings);
    expect(drawing.parts).toBe(3000);
    expect(picture.lines.reduce((sum, line) => sum + line.length, 0)).toBeLessThanOrEqual(60_000);
    expect(picture.isSimplified).toBe(true);
  }, 60_000);
});
