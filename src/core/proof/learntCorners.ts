import { shapeLengthMm, shapeOutline } from '../card/testShapes.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { meanSdOf } from '../cutmodel/posterior.ts';
import { cornerPowerPct, type Setting } from '../machine/setting.ts';
import { planPath } from '../motion/planPath.ts';
import { speedAlong } from '../motion/speedAlong.ts';
import { assumedMotion } from '../motion/timeBand.ts';
import { referenceLengthMm } from '../reading/promise.ts';
import { beamWork } from './beamWork.ts';
import { lineInTime } from './lineInTime.ts';
import { slowedPlaces, type SlowedPlace } from './slowedPlaces.ts';

/** What a corners card taught of a setting, ready to be brought to the places of a drawing. */
export interface LearntCorners {
  /** Mean of the exponent: what is lost for each ln(power at full speed / power in corners). */
  readonly exponent: number;
  /** ln(power at full speed / power in corners), delivered. */
  readonly lnCorners: number;
  /** How much of what was learnt holds at a place: 1 where the power falls as far as in the card's own corners. */
  readonly shareAt: (place: Weakened) => number;
  /** The margin change at a place, by what was learnt. */
  readonly changeAt: (place: Weakened) => number;
}

type Weakened = Pick<SlowedPlace, 'marginChange' | 'weakest'>;

/**
 * In the card's corners a power that falls by less than this, in ln, is no fall that another could be held against: where
 * the motion says so, every fall counts against at least this much.
 */
const leastFall = 0.1;

/**
 * Joins what a card taught with what the motion says. The card knows what its own corners cost, of whatever acceleration,
 * lag and spot; the motion knows by how much another corner's power falls. So at a place the reckoned change is mended by
 * learnt − reckoned of the card's own shape, in proportion to how far the power falls there; and a drawing of that shape gets
 * what the card measured. See docs/adr/0014.
 *
 * @returns undefined where no card taught it, where the powers are equal, or where all of the path runs on the power in
 * corners, which is no matter of corners.
 */
export const learntCorners = (fitted: Fit, setting: Setting): LearntCorners | undefined => {
  const { posterior, compiled, study } = fitted;
  const { machine } = study;
  const { powerPct, speedMmPerS } = setting;
  if (!posterior.converged || posterior.layout.cornersExponent < 0) return undefined;
  if (speedMmPerS <= (machine.powerRampStartMmPerS ?? 0)) return undefined;
  const [lnFull, lnLeast] = [powerPct, cornerPowerPct(setting)].map(compiled.lnPowerOf);
  if (lnFull == null || lnLeast == null || lnLeast >= lnFull) return undefined;
  const exponent = meanSdOf(posterior, (i) => posterior.cornersExponent[i] ?? NaN).mean;
  const powerExponent = meanSdOf(posterior, (i) => posterior.powerExponent[i] ?? NaN).mean;
  const own = weakestOfCard(fitted, setting, powerExponent);
  if (own === undefined) return undefined;
  const lnCorners = lnFull - lnLeast;
  const mending = -exponent * lnCorners - own.marginChange;
  const whole = Math.max(leastFall, fallAt(own));
  const shareAt = (place: Weakened): number => Math.min(1, fallAt(place) / whole);
  return {
    exponent,
    lnCorners,
    shareAt,
    changeAt: (place) => place.marginChange + shareAt(place) * mending,
  };
};

/** By how much the power falls at a place, in ln. */
const fallAt = ({ weakest }: Weakened): number =>
  Math.log(1 / Math.min(1, Math.max(1e-3, weakest.powerShare)));

/**
 * The weakest place of the shape that cards have unless another is asked for, as long as the reference: what a study was
 * graded on is kept by its length, not by its shape.
 */
const weakestOfCard = (
  { study: { machine } }: Fit,
  setting: Setting,
  powerExponent: number,
): SlowedPlace | undefined => {
  const work = beamWork(machine, setting);
  if (work === null) return undefined;
  const shape = shapeOutline('star', referenceLengthMm / shapeLengthMm('star', 1));
  const motion = machine.motion ?? assumedMotion.likely;
  const plan = planPath(shape, { ...motion, speedMmPerS: setting.speedMmPerS });
  const places = slowedPlaces(lineInTime(speedAlong(plan), work, true), work, powerExponent, true);
  return places.reduce<SlowedPlace | undefined>(
    (least, place) =>
      least !== undefined && least.marginChange <= place.marginChange ? least : place,
    undefined,
  );
};
