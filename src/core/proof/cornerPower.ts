import { deliveryOf } from '../tube/deliveredPower.ts';
import type { Machine } from '../machine/machine.ts';
import { cornerPowerPct, type Setting } from '../machine/setting.ts';
import type { PathPlan } from '../motion/planPath.ts';
import { speedAlong, type SpeedAlong } from '../motion/speedAlong.ts';
import { beamWork } from './beamWork.ts';
import type { LearntCorners } from './learntCorners.ts';
import { lineInTime } from './lineInTime.ts';
import { verdictsOn, type PlaceLimits } from './placeVerdict.ts';
import { blurMm, placesOn } from './slowedPlaces.ts';
import { slowedStretches, type SlowedStretch } from './slowedStretches.ts';

/** What one power in corners does to a drawing. */
export interface CornersEffect {
  readonly minPowerPct: number;
  /** Energy at the hottest tip, as a multiple of that at full speed. */
  readonly hottestRatio: number;
  /** Margin change at the weakest place, in ln speed. */
  readonly weakestChange: number;
  /** How uneven the energy is over the slowed stretches: root mean square of ln(energy / energy at full speed). */
  readonly unevenness: number;
}

/**
 * What is to be said of the power in corners. It is decided here for all that say it: no figure below the power at full speed
 * while nobody knows at which speed the controller's power ramp starts and no card tried one. With a ramp that starts above the set
 * speed all of the path runs on it, and nothing comes out. The same power in corners leaves no place weak, whatever the ramp.
 */
export type CornersAdvice = CornerPowerFacts | CornersUnknown;

export interface CornersUnknown {
  readonly rampStart: 'unknown';
  /** What is set now. */
  readonly nowPct: number;
  readonly places: number;
}

/** The power in corners to type, and what it costs and gains. */
export interface CornerPowerFacts {
  readonly best: CornersEffect;
  /** With the power at full speed in the corners too. */
  readonly equal: CornersEffect;
  /** With what is set now. */
  readonly now: CornersEffect;
  /** Slowed places that were looked at: of a big drawing a fair sample. */
  readonly places: number;
  /** By what: the speed at which the controller's power ramp starts is known, or a card tried powers in corners. */
  readonly rampStart: 'known' | 'by-card';
}

/** What a corners card taught. */
export interface CornersCard {
  /** Whether its own shape keeps the promise with so much power in corners. */
  readonly holds: (minPowerPct: number) => boolean;
  /** What it says of places at a setting. */
  readonly learnt: (setting: Setting) => LearntCorners | undefined;
}

const noCard: CornersCard = { holds: () => true, learnt: () => undefined };

/** A line as planned, and whether it loops. */
export interface PlannedLine {
  readonly plan: PathPlan;
  readonly loops: boolean;
}

/**
 * Where nobody read the meter nobody knows from which setting on the tube fires: below this one many do not. Common
 * practice, no source.
 */
const firesFromPct = 10;

/** Slowed places that are tried at every power. */
const mostPlaces = 800;

/**
 * The power in corners with which the energy over the slowed stretches is nearest to that on the straight, among those that
 * leave no place weak; over whole per cents from where the tube fires (from 10 where its meter was not
 * read) up to the power at full speed. Equal powers leave
 * none weak, so that there always is one; null where nothing is slowed or the tube is not known.
 *
 * @param card what a corners card taught of one power in corners; absent: no card did.
 */
export const adviseCorners = (
  lines: readonly PlannedLine[],
  machine: Machine,
  setting: Setting,
  powerExponent: number,
  limits: PlaceLimits,
  card: CornersCard = noCard,
): CornersAdvice | null => {
  const sample = sampleOf(lines).map((line) => sampled(line, setting.speedMmPerS));
  const effect = (minPowerPct: number) => {
    const tried = { ...setting, minPowerPct };
    return effectOf(sample, machine, tried, powerExponent, limits, card.learnt(tried));
  };
  const equal = effect(setting.powerPct);
  const now = effect(cornerPowerPct(setting));
  if (equal === null || now === null || equal.places === 0) return null;
  if (machine.powerRampStartMmPerS === undefined && card === noCard)
    return { rampStart: 'unknown', nowPct: now.minPowerPct, places: equal.places };
  let best = equal;
  const delivery = deliveryOf(machine);
  const least = machine.tubePoints === undefined ? firesFromPct : 1;
  for (let pct = Math.ceil(setting.powerPct - 1e-9) - 1; pct >= least; pct -= 1) {
    if ((delivery(pct) ?? 0) <= 0) break;
    const tried = effect(pct);
    // Less power never makes a place stronger: from here on all are weak.
    if (tried === null || tried.weak || !card.holds(pct)) break;
    if (tried.unevenness < best.unevenness) best = tried;
  }
  return {
    best: shown(best),
    equal: shown(equal),
    now: shown(now),
    places: equal.places,
    rampStart: machine.powerRampStartMmPerS === undefined ? 'by-card' : 'known',
  };
};

type Tried = CornersEffect & { readonly weak: boolean; readonly places: number };

const shown = ({ minPowerPct, hottestRatio, weakestChange, unevenness }: Tried): CornersEffect => ({
  minPowerPct,
  hottestRatio,
  weakestChange,
  unevenness,
});

const effectOf = (
  lines: readonly SampledLine[],
  machine: Machine,
  setting: Setting & { readonly minPowerPct: number },
  powerExponent: number,
  limits: PlaceLimits,
  learnt: LearntCorners | undefined,
): Tried | null => {
  const work = beamWork(machine, setting);
  if (work === null) return null;
  let [hottestRatio, weakestChange, places, squares, length] = [0, Infinity, 0, 0, 0];
  let weak = false;
  for (const { speeds, stretches, loops } of lines) {
    const line = lineInTime(speeds, work, loops);
    for (const place of placesOn(line, work, powerExponent, stretches)) {
      places += 1;
      hottestRatio = Math.max(hottestRatio, place.energyRatio);
      const { energyRatio } = place;
      const marginChange = learnt?.changeAt(place) ?? place.marginChange;
      weakestChange = Math.min(weakestChange, marginChange);
      weak ||= verdictsOn({ marginChange, energyRatio }, limits).some(
        (verdict) => verdict !== 'tips-burn',
      );
      const bins = Math.max(1, Math.round((place.toMm - place.fromMm) / blurMm));
      const binMm = (place.toMm - place.fromMm) / bins;
      for (let k = 0; k < bins; k += 1) {
        const passed = line.over(place.fromMm + k * binMm, place.fromMm + (k + 1) * binMm);
        if (!(passed.lengthMm > 0)) continue;
        const ratio = Math.max(1e-3, (passed.workS * work.setMmPerS) / passed.lengthMm);
        squares += passed.lengthMm * Math.log(ratio) ** 2;
        length += passed.lengthMm;
      }
    }
  }
  return {
    minPowerPct: setting.minPowerPct,
    hottestRatio,
    weakestChange: places === 0 ? 0 : weakestChange,
    unevenness: length > 0 ? Math.sqrt(squares / length) : 0,
    weak,
    places,
  };
};

/** What of a line is the same at every power in corners, with the places at which powers are tried. */
interface SampledLine {
  readonly speeds: SpeedAlong;
  readonly stretches: readonly SlowedStretch[];
  readonly loops: boolean;
}

/** Of a line with very many places as many as are looked at, evenly along it: a drawing may be one long line. */
const sampled = ({ plan, loops }: PlannedLine, setMmPerS: number): SampledLine => {
  const speeds = speedAlong(plan);
  const all = slowedStretches(speeds, setMmPerS, loops);
  const every = Math.ceil(all.length / mostPlaces);
  return { speeds, stretches: all.filter((_, i) => i % every === 0), loops };
};

/** Lines alike count once; of the others as many, evenly over the drawing, as have the places that are looked at. */
const sampleOf = (lines: readonly PlannedLine[]): readonly PlannedLine[] => {
  const distinct = new Map<string, PlannedLine>();
  for (const line of lines) {
    const { lengthMm, seconds, segmentMm } = line.plan;
    distinct.set(`${String(segmentMm.length)} ${lengthMm.toFixed(2)} ${seconds.toFixed(4)}`, line);
  }
  const all = [...distinct.values()];
  const corners = (line: PlannedLine): number => {
    const { cornerMmPerS, limits } = line.plan;
    return cornerMmPerS.reduce((n, speed) => n + (speed < 0.95 * limits.speedMmPerS ? 1 : 0), 0);
  };
  const total = all.reduce((sum, line) => sum + corners(line), 0);
  const step = Math.max(1, total / mostPlaces);
  let [passed, next] = [0, 0];
  return all.filter((line) => {
    passed += corners(line);
    if (passed < next) return false;
    next = passed + (step - 1) * corners(line);
    return true;
  });
};
