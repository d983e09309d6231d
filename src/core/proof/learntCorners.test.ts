import { beforeAll, describe, expect, it } from 'vitest';

import { shapeLengthMm, shapeOutline } from '../card/testShapes.ts';
import type { CutStudy, StudyCell } from '../cutmodel/cutStudy.ts';
import { fit, type Fit } from '../cutmodel/fit.ts';
import type { MotionValues } from '../motion/motionValues.ts';
import type { Setting } from '../machine/setting.ts';
import { placed, type Polyline } from '../path/polyline.ts';
import { learntCorners } from './learntCorners.ts';
import { proveDrawing, type DrawingProof } from './proveDrawing.ts';

const motion: MotionValues = {
  accelerationMmPerS2: 300,
  corner: { rule: 'speed-jump', xMmPerS: 2, yMmPerS: 2 },
  travelSpeedMmPerS: 150,
};

const cell = (speedMmPerS: number, grade: StudyCell['grade'], minPowerPct?: number): StudyCell => ({
  powerPct: 30,
  speedMmPerS,
  passes: 1,
  ...(grade === undefined ? {} : { grade }),
  ...(minPowerPct === undefined ? {} : { minPowerPct }),
});

/** A ladder at 30 %: all out up to 20 mm/s, none from 25; and what a card said of less power in corners at 14 mm/s. */
const fitted = (corners: readonly StudyCell[]): Fit => {
  const study: CutStudy = {
    machine: { maxPowerPct: 90, speedRangeMmPerS: [1, 100], motion, powerRampStartMmPerS: 9 },
    stock: { material: 'plywood', thicknessMm: 3 },
    cells: [
      ...[12, 14, 16, 18, 19, 20, 21, 22, 23, 24, 25, 28].flatMap((speed, i) =>
        [0, 1].map(() => cell(speed, i < 6 ? 'out' : i < 9 ? 'hangs' : 'stays')),
      ),
      ...corners,
    ],
    tallies: [],
    promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
    ask: { powerPct: 30 },
  };
  return fit(study);
};

/** So many cells down the powers in corners; from which on they hang. */
const card = (hangsFrom: number): readonly StudyCell[] =>
  [24, 21, 18, 15, 12, 9].flatMap((minPowerPct) =>
    [0, 1, 2].map(() => cell(14, minPowerPct <= hangsFrom ? 'hangs' : 'out', minPowerPct)),
  );

let [never, mild, harsh]: Fit[] = [];
beforeAll(() => {
  never = fitted([]);
  mild = fitted(card(0));
  harsh = fitted(card(21));
});
const of = (found: Fit | undefined): Fit => {
  if (found === undefined) throw new Error('not fitted');
  return found;
};

const setting: Setting = { powerPct: 30, minPowerPct: 15, speedMmPerS: 14, passes: 1 };
const star = shapeOutline('star', 60 / shapeLengthMm('star', 1));
const stars = Array.from({ length: 20 }, (_, i) =>
  placed(star, [60 * (i % 5), 60 * Math.floor(i / 5)]),
);
const proof = (
  found: Fit | undefined,
  change: Partial<Setting> = {},
  lines: readonly Polyline[] = stars,
): DrawingProof =>
  proveDrawing({
    lines: lines.map((points) => ({ points, passes: 1 })),
    setting: { ...setting, ...change },
    fitted: of(found),
  });

describe('what a corners card taught, on a drawing', () => {
  it('is what the card measured where the drawing is of the card’s own shape', () => {
    for (const fitted of [mild, harsh]) {
      for (const minPowerPct of [12, 15, 20]) {
        const learnt = learntCorners(of(fitted), { ...setting, minPowerPct });
        if (learnt === undefined) throw new Error('nothing learnt');
        expect(learnt.lnCorners).toBeCloseTo(Math.log(30 / minPowerPct), 9);
        const { promise } = proof(fitted, { minPowerPct });
        const [kind] = promise?.kinds ?? [];
        expect(kind?.marginChange).toBeCloseTo(Math.min(0, -learnt.exponent * learnt.lnCorners), 2);
        // As sure as the study itself is of its own shape: to what 1500 points of the posterior tell.
        const sure = 100 * of(fitted).decision.sureAt(30, 14, minPowerPct);
        expect(Math.abs((kind?.surePct ?? 0) - sure)).toBeLessThan(3);
      }
    }
  });

  it('makes more or fewer places weak than the motion alone, as the card was', () => {
    const weak = ({ places: { withVerdict } }: DrawingProof): number =>
      withVerdict['not-through'] + withVerdict['may-hang'];
    const [alone, good, bad] = [never, mild, harsh].map((fitted) =>
      proof(fitted, { minPowerPct: 12 }),
    );
    if (alone === undefined || good === undefined || bad === undefined) throw new Error('no proof');
    expect([alone, good, bad].map(({ cornersBy }) => cornersBy)).toEqual([
      'motion',
      'card',
      'card',
    ]);
    expect(weak(bad)).toBeGreaterThan(weak(good));
    expect(bad.promise?.needKnife.mean).toBeGreaterThan(good.promise?.needKnife.mean ?? Infinity);
    // The advice follows: where corners cost more, they are given more.
    const advice = [good, bad].map(({ corners }) =>
      corners === undefined || corners.rampStart === 'unknown' ? 0 : corners.best.minPowerPct,
    );
    expect(advice[1]).toBeGreaterThan(advice[0] ?? Infinity);
  });

  it('holds less at gentler corners, not at all where the power does not fall', () => {
    const learnt = learntCorners(of(harsh), setting);
    if (learnt === undefined) throw new Error('nothing learnt');
    const at = (powerShare: number) => ({
      marginChange: -0.05,
      weakest: { atMm: 0, powerShare, speedShare: 0.5 },
    });
    const shares = [1, 0.9, 0.75, 0.6, 0.5].map((share) => learnt.shareAt(at(share)));
    expect(shares[0]).toBe(0);
    expect(learnt.changeAt(at(1))).toBe(-0.05);
    for (const [i, share] of shares.entries()) {
      expect(share).toBeGreaterThanOrEqual(shares[i - 1] ?? 0);
      expect(share).toBeLessThanOrEqual(1);
    }
    // Straight lines are no corners: their ends are, and those are slowed as the card's were.
    const ring: Polyline = Array.from({ length: 361 }, (_, i) => [
      40 * Math.cos((i * Math.PI) / 180),
      40 * Math.sin((i * Math.PI) / 180),
    ]);
    const round = proof(harsh, {}, [ring]).promise?.kinds[0]?.marginChange ?? NaN;
    expect(round).toBeGreaterThanOrEqual(
      (proof(harsh).promise?.kinds[0]?.marginChange ?? NaN) - 1e-9,
    );
  });

  it('is not asked where powers are equal, or all of the path runs on the power in corners', () => {
    expect(learntCorners(of(harsh), { ...setting, minPowerPct: 30 })).toBeUndefined();
    expect(learntCorners(of(harsh), { ...setting, speedMmPerS: 8 })).toBeUndefined();
    expect(learntCorners(of(never), setting)).toBeUndefined();
    expect(proof(harsh, { minPowerPct: 30 }).promise).toEqual(
      proveDrawing({
        lines: stars.map((points) => ({ points, passes: 1 })),
        setting: { powerPct: 30, speedMmPerS: 14, passes: 1 },
        fitted: of(harsh),
      }).promise,
    );
  });
});
