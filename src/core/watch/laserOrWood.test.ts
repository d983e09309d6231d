import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fourOldBoards } from '../../../test/samples/earlier.ts';
import { normalCdf } from '../../num/normal.ts';
import { fit, type Fit } from '../cutmodel/fit.ts';
import type { StudyCell } from '../cutmodel/cutStudy.ts';
import { links } from '../cutmodel/links.ts';
import { priors } from '../cutmodel/priors.ts';
import type { Grade, SpoiltReason } from '../reading/grade.ts';
import { causePriors, causes, changeSizes, laserOrWood, type Cause } from './laserOrWood.ts';

/** Four boards of an invented workshop; their changeover is read as 18.5 mm/s or so. */
const fitted = fit(fourOldBoards());
const speeds = [14.5, 15.5, 16.5, 17.5, 18.5, 19.5];

const strip = (given: readonly Grade[], spoilt?: SpoiltReason): readonly StudyCell[] =>
  given.map((grade, i) => ({
    powerPct: 30,
    speedMmPerS: speeds[i % speeds.length] ?? 0,
    passes: 1,
    sheet: 'strip',
    grade,
    ...(spoilt === undefined ? {} : { spoilt }),
  }));
/** Two cells a speed, as a changeover without scatter would have it. */
const cutAt = (v50: number): readonly StudyCell[] => {
  const once = speeds.map((v): Grade => (v < v50 ? 'out' : v < 1.06 * v50 ? 'hangs' : 'stays'));
  return strip([...once, ...once]);
};
const nothing = { reference: [], newBatch: [] };

describe('laser or wood', () => {
  it('says the prior of no strips, and points nowhere', () => {
    const { share, pointsAt, laser, wood } = laserOrWood(fitted, nothing);
    // What the ends of the grid cut off is less than 1 in 200.
    for (const cause of causes) expect(share[cause]).toBeCloseTo(causePriors[cause], 2);
    expect(pointsAt).toBe('unclear');
    // Mean of a half-normal is sd·√(2/π) (Johnson, Kotz & Balakrishnan 1994, ch. 13); it loses 85 times in 100.
    const { laserSd, laserLosesShare } = changeSizes;
    const mean = (1 - 2 * laserLosesShare) * laserSd * Math.sqrt(2 / Math.PI);
    expect(laser.mean).toBeCloseTo((causePriors.laser + causePriors.both) * mean, 2);
    expect(wood.mean).toBeCloseTo(0, 2);
  });

  it('says no more of strips that were spoilt, or not read', () => {
    const blank = laserOrWood(fitted, nothing);
    const pockets = strip(['stays', 'stays', 'hangs', 'stays'], 'knot');
    const unread = speeds.map((speedMmPerS) => ({ powerPct: 30, speedMmPerS, passes: 1 }));
    expect(laserOrWood(fitted, { reference: pockets, newBatch: unread })).toEqual(blank);
  });

  it('weighs one shape as the integrals say', () => {
    // With the history known to the last, no sheet effect and no flaw, one shape of the new batch at the very changeover
    // came out. P(out) is then Φ of a sum of normals (Rasmussen & Williams 2006, eq. 3.82) where the laser is as it was,
    // and ½ + (gains − loses)·atan(sd/scatter)/π where it moved by a half-normal (orthant probability, Sheppard 1899).
    const scatter = 0.08;
    const sure = knownToTheLast(scatter);
    const speedMmPerS = Math.exp(levelOf(sure));
    const newBatch = strip(['out']).map((cell) => ({ ...cell, speedMmPerS }));
    const { share } = laserOrWood(sure, { reference: [], newBatch });
    const { laserSd, laserLosesShare, woodSd, unchangedSd } = changeSizes;
    const moved = (woodScatter: number): number =>
      0.5 +
      ((1 - 2 * laserLosesShare) * Math.atan(laserSd / Math.hypot(scatter, woodScatter))) / Math.PI;
    const out: Readonly<Record<Cause, number>> = {
      laser: moved(unchangedSd),
      both: moved(woodSd),
      wood: normalCdf(0),
      neither: normalCdf(0),
    };
    const { misreading } = priors;
    const weights = causes.map(
      (cause) => causePriors[cause] * (0.5 * misreading + (1 - 1.5 * misreading) * out[cause]),
    );
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    causes.forEach((cause, i) => expect(share[cause]).toBeCloseTo((weights[i] ?? 0) / all, 2));
    expect(share.laser).toBeLessThan(0.19); // by hand: .25·.285/(.25·.285 + .1·.343 + .65·.5) = .166
  });

  it('points at the laser where both sheets cut worse, at the wood where the new one does', () => {
    const laser = laserOrWood(fitted, { reference: cutAt(15), newBatch: cutAt(15) });
    expect(laser.pointsAt).toBe('laser');
    expect(laser.laser.mean).toBeLessThan(-0.08);
    const wood = laserOrWood(fitted, { reference: cutAt(18.4), newBatch: cutAt(15) });
    expect(wood.pointsAt).toBe('wood');
    expect(wood.wood.mean).toBeLessThan(-0.06);
    expect(Math.abs(wood.laser.mean)).toBeLessThan(0.04);
  });

  it('leans to neither where both cut as they did', () => {
    const { share } = laserOrWood(fitted, { reference: cutAt(18.4), newBatch: cutAt(18.4) });
    expect(share.neither).toBeGreaterThan(0.35);
    expect(share.both).toBeLessThan(0.1);
  });

  it('does not tell laser from wood by the new batch alone, and says so', () => {
    const { share, pointsAt } = laserOrWood(fitted, { reference: [], newBatch: cutAt(15) });
    expect(pointsAt).toBe('unclear');
    expect(share.neither).toBeLessThan(causePriors.neither);
    // Whichever it is, something changed: laser and wood keep about the odds that they had.
    expect(share.laser).toBeGreaterThan(0.2);
    expect(share.wood).toBeGreaterThan(0.2);
  });

  const someStrip = fc.array(fc.constantFrom<Grade>('out', 'hangs', 'stays'), { maxLength: 12 });

  it('gives shares that sum to one, whatever came out, and in whatever order it is told', () => {
    fc.assert(
      fc.property(someStrip, someStrip, (one, other) => {
        const [reference, newBatch] = [strip(one), strip(other)];
        const { share, pointsAt } = laserOrWood(fitted, { reference, newBatch });
        for (const cause of causes) expect(share[cause]).toBeGreaterThanOrEqual(0);
        expect(causes.reduce((sum, cause) => sum + share[cause], 0)).toBeCloseTo(1, 12);
        if (pointsAt !== 'unclear') expect(share[pointsAt]).toBeGreaterThanOrEqual(0.6);
        const turned = laserOrWood(fitted, {
          reference: reference.toReversed(),
          newBatch: newBatch.toReversed(),
        });
        for (const cause of causes) expect(turned.share[cause]).toBeCloseTo(share[cause], 9);
      }),
      { numRuns: 15 },
    );
  });

  it('holds the wood for no likelier by the reference sheet alone', () => {
    fc.assert(
      fc.property(someStrip, (grades) => {
        const { share } = laserOrWood(fitted, { reference: strip(grades), newBatch: [] });
        // Whatever the laser did, the wood's odds beside it stay those of the prior: nothing was cut in the new batch.
        const { laser, wood, both, neither } = causePriors;
        expect(share.wood / share.neither).toBeCloseTo(wood / neither, 2);
        expect(share.both / share.laser).toBeCloseTo(both / laser, 1);
      }),
      { numRuns: 15 },
    );
  });

  it('holds the laser for no faster where one shape more stayed in the reference sheet', () => {
    fc.assert(
      fc.property(someStrip, fc.nat(11), (grades, which) => {
        const out = grades.map((grade, i): Grade => (i === which ? 'out' : grade));
        const stayed = grades.map((grade, i): Grade => (i === which ? 'stays' : grade));
        const laser = (reference: readonly Grade[]) =>
          laserOrWood(fitted, { reference: strip(reference), newBatch: [] }).laser.mean;
        expect(laser(stayed)).toBeLessThanOrEqual(laser(out) + 1e-9);
      }),
      { numRuns: 15 },
    );
  });
});

/** A history that leaves nothing open but the scatter given: normal link, one changeover, no sheet effect, no flaw. */
const knownToTheLast = (sigma: number): Fit => {
  const { posterior } = fitted;
  const normal = links.findIndex(({ name }) => name === 'normal');
  const all = (value: number) => new Float64Array(posterior.count).fill(value);
  return {
    ...fitted,
    posterior: {
      ...posterior,
      weight: all(1 / posterior.count),
      link: new Uint8Array(posterior.count).fill(normal),
      lnV50: all(Math.log(17)),
      powerExponent: all(1),
      thicknessExponent: all(1),
      passesExponent: all(1),
      sigma: all(sigma),
      hangBand: all(0.05),
      sheetSd: all(0),
      flawsPerMetre: all(0),
      air: posterior.air.map(() => all(0)),
      batch: posterior.batch.map(() => all(0)),
      sheetEffect: () => all(0),
    },
  };
};

/** ln of the speed at which half come out there, at 30 %. */
const levelOf = (sure: Fit): number =>
  (sure.posterior.lnV50[0] ?? 0) + (sure.compiled.lnPowerOf(30) ?? 0);
