import type { Decision } from '../cutmodel/decision.ts';
import { decisionOn } from '../cutmodel/decisionOn.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { fastestOutAt } from '../cutmodel/evidence.ts';
import { meanSdOf } from '../cutmodel/posterior.ts';
import { priors } from '../cutmodel/priors.ts';
import { overdrives } from '../card/firingLimits.ts';
import { powerLimit } from '../tube/deliveredPower.ts';
import type { MotionValues } from '../motion/motionValues.ts';
import type { Setting } from '../machine/setting.ts';
import { wholeJobTime, type JobMove } from '../motion/jobTime.ts';
import { planPath } from '../motion/planPath.ts';
import { speedAlong } from '../motion/speedAlong.ts';
import { assumedMotion, timeBand } from '../motion/timeBand.ts';
import { boxAround } from '../path/box.ts';
import { isClosed, lengthMm, type Polyline } from '../path/polyline.ts';
import type { Problem } from '../problem.ts';
import { beamWork, type BeamWork } from './beamWork.ts';
import { drawingRemarks, type DrawingRemark } from './drawingRemarks.ts';
import { drawPicture, type ProofPicture } from './drawPicture.ts';
import { groupPlaces, type FoundPlace, type PlaceGroup } from './groupPlaces.ts';
import { learntCorners, type LearntCorners } from './learntCorners.ts';
import { lineInTime } from './lineInTime.ts';
import { partsOf, type DrawingInParts } from './partsOf.ts';
import { burnsAtRatio, verdictsOn, type PlaceLimits, type PlaceVerdict } from './placeVerdict.ts';
import {
  adviseCorners,
  type CornersAdvice,
  type CornersCard,
  type PlannedLine,
} from './cornerPower.ts';
import { promiseForParts, type DrawingPromise, type PartToPromise } from './promiseForParts.ts';
import { slowedPlaces } from './slowedPlaces.ts';

/** A line of the drawing, cut in one go, so many times for one pass of the setting. */
export interface LineToProve {
  readonly points: Polyline;
  readonly passes: number;
}

export interface ProofQuestion {
  /** In the order of cutting. */
  readonly lines: readonly LineToProve[];
  readonly setting: Setting;
  readonly fitted: Fit;
  /** Why the study recommends nothing: then nothing is promised for the drawing either. */
  readonly noPromise?: Problem;
}

/** Which part of the work is under way, in order. */
export const proofStages = ['parts', 'places', 'remarks', 'corners', 'promise', 'time'] as const;
export type ProofStage = (typeof proofStages)[number];

/** Runs between two places where the head never gets near its set speed. */
export interface NeverAtSpeed {
  readonly runs: number;
  readonly lengthMm: number;
  /** The fastest that any of them gets. */
  readonly fastestMmPerS: number;
}

/** What a setting will do to a drawing. */
export interface DrawingProof {
  readonly setting: Setting;
  readonly drawing: {
    readonly lines: number;
    readonly cutMm: number;
    readonly parts: number;
    readonly openLines: number;
    readonly widthMm: number;
    readonly heightMm: number;
  };
  /** Whether the machine's own motion is known, or a common one stands for it. */
  readonly motion: 'known' | 'assumed';
  readonly time: {
    readonly seconds: number;
    readonly lowSeconds: number;
    readonly highSeconds: number;
  };
  readonly places: {
    readonly slowed: number;
    readonly withVerdict: Readonly<Record<PlaceVerdict, number>>;
    /** Alike places together, the worst first, numbered from 1 as in the picture. */
    readonly groups: readonly PlaceGroup[];
    readonly groupsLeftOut: number;
  };
  readonly neverAtSpeed?: NeverAtSpeed;
  /** What places were held against: the speeds at which half come out and at which the promise holds. */
  readonly limits: PlaceLimits;
  /** `undefined`: nothing is promised, for `noPromise`. */
  readonly promise?: DrawingPromise;
  readonly noPromise?: Problem;
  readonly corners?: CornersAdvice;
  /** What places are weak by: the motion alone, or also what a card measured in its own corners. */
  readonly cornersBy: 'motion' | 'card';
  readonly remarks: readonly DrawingRemark[];
  readonly picture: ProofPicture;
}

/** Above this share of the set speed a run is taken to be at speed. */
const atSpeedShare = 0.9;

/**
 * Carries a setting to a drawing: where the head slows and what that does, the promise for its parts, the power in corners
 * to type, the time. Pure; some seconds for 20 000 lines. `told` hears of each stage as it begins.
 */
export const proveDrawing = (
  { lines, setting, fitted, noPromise }: ProofQuestion,
  told: (stage: ProofStage) => void = () => undefined,
): DrawingProof => {
  const { machine, stock } = fitted.study;
  const paths = lines.map(({ points }) => points);
  told('parts');
  const drawn = partsOf(paths);
  told('places');
  const motion = machine.motion ?? assumedMotion.likely;
  const planned = paths.map((points): PlannedLine => ({
    plan: planPath(points, { ...motion, speedMmPerS: setting.speedMmPerS }),
    loops: isClosed(points),
  }));
  const work = beamWork(machine, setting);
  const decision = decisionFor(fitted, setting);
  const limits = limitsFor(decision, setting, noPromise === undefined);
  const powerExponent = exponentOf(fitted);
  const learnt = learntCorners(fitted, setting);
  const slowed =
    work === null
      ? noneSlowed(lines.length)
      : lookAlong(planned, work, powerExponent, limits, learnt);
  const { groups, leftOut } = groupPlaces(slowed.places);
  told('remarks');
  const remarks = drawingRemarks(paths, drawn, stock.thicknessMm);
  told('corners');
  const corners = adviseCorners(
    planned,
    machine,
    setting,
    powerExponent,
    limits,
    cornersCard(fitted, decision, setting),
  );
  told('promise');
  const promise =
    noPromise === undefined && work !== null
      ? promiseForParts(fitted, setting, partsToPromise(drawn, slowed), learnt)
      : null;
  told('time');
  const box = boxAround(paths);
  return {
    setting,
    drawing: {
      lines: lines.length,
      cutMm: paths.reduce((sum, points) => sum + lengthMm(points), 0),
      parts: drawn.parts.length,
      openLines: drawn.open.length,
      widthMm: box === undefined ? 0 : box.rightMm - box.leftMm,
      heightMm: box === undefined ? 0 : box.topMm - box.bottomMm,
    },
    ...timeOf(lines, setting, machine.motion),
    places: {
      slowed: slowed.count,
      withVerdict: slowed.withVerdict,
      groups,
      groupsLeftOut: leftOut,
    },
    ...(slowed.neverAtSpeed.runs === 0 ? {} : { neverAtSpeed: slowed.neverAtSpeed }),
    limits,
    ...(promise === null ? {} : { promise }),
    ...(noPromise === undefined ? {} : { noPromise }),
    ...(corners === null ? {} : { corners }),
    cornersBy: learnt === undefined ? 'motion' : 'card',
    remarks: [...settingRemarks(fitted, setting, work), ...remarks],
    picture: drawPicture(paths, slowed.places, groups, remarks),
  };
};

const exponentOf = ({ posterior }: Fit): number =>
  posterior.converged
    ? meanSdOf(posterior, (i) => posterior.powerExponent[i] ?? NaN).mean
    : priors.powerExponent.mean;

/** What is held against, for so many passes. */
const decisionFor = (
  { decision, compiled, posterior, study }: Fit,
  { passes }: Setting,
): Decision => (passes === 1 ? decision : decisionOn(compiled, posterior, study.promise, passes));

const limitsFor = (
  decision: Decision,
  { powerPct, speedMmPerS }: Setting,
  promised: boolean,
): PlaceLimits => {
  const base = { setMmPerS: speedMmPerS, burnsAtRatio };
  if (!promised) return base;
  const [half, holds] = [decision.v50Quantile(powerPct, 0.5), decision.fastestHolding(powerPct)];
  return {
    ...base,
    ...(half === null ? {} : { halfOutMmPerS: half }),
    ...(holds === null ? {} : { holdsMmPerS: holds }),
  };
};

/** What a corners card taught, where one was cut. */
const cornersCard = (
  fitted: Fit,
  decision: Decision,
  { powerPct, speedMmPerS }: Setting,
): CornersCard | undefined =>
  fitted.posterior.layout.cornersExponent < 0
    ? undefined
    : {
        holds: (minPct) =>
          100 * decision.sureAt(powerPct, speedMmPerS, minPct) >= fitted.study.promise.surePct,
        learnt: (tried) => learntCorners(fitted, tried),
      };

interface Slowed {
  readonly count: number;
  readonly places: readonly FoundPlace[];
  readonly withVerdict: Readonly<Record<PlaceVerdict, number>>;
  readonly neverAtSpeed: NeverAtSpeed;
  /** By line, never above 0. */
  readonly weakestOfLine: Float64Array;
  /** By line: how much of what a corners card taught holds at its weakest place. */
  readonly learntOfLine: Float64Array;
}

const noneSlowed = (lines: number): Slowed => ({
  count: 0,
  places: [],
  withVerdict: { 'not-through': 0, 'may-hang': 0, 'tips-burn': 0 },
  neverAtSpeed: { runs: 0, lengthMm: 0, fastestMmPerS: 0 },
  weakestOfLine: new Float64Array(lines),
  learntOfLine: new Float64Array(lines),
});

/** All places of all lines, with their verdicts. */
const lookAlong = (
  planned: readonly PlannedLine[],
  work: BeamWork,
  powerExponent: number,
  limits: PlaceLimits,
  learnt: LearntCorners | undefined,
): Slowed => {
  const places: FoundPlace[] = [];
  const withVerdict = { 'not-through': 0, 'may-hang': 0, 'tips-burn': 0 };
  let [runs, runMm, fastest] = [0, 0, 0];
  // Where the set speed is not above the ramp's start the straight stretches are weak too.
  const atSpeed = powerExponent * Math.log(Math.max(1e-3, work.shareAt(work.setMmPerS)));
  const weakestOfLine = new Float64Array(planned.length).fill(Math.min(0, atSpeed));
  const learntOfLine = new Float64Array(planned.length);
  planned.forEach(({ plan, loops }, line) => {
    for (const found of slowedPlaces(
      lineInTime(speedAlong(plan), work, loops),
      work,
      powerExponent,
      loops,
    )) {
      const place =
        learnt === undefined ? found : { ...found, marginChange: learnt.changeAt(found) };
      const verdicts = verdictsOn(place, limits);
      for (const verdict of verdicts) withVerdict[verdict] += 1;
      places.push({ ...place, line, verdicts });
      if (place.marginChange < (weakestOfLine[line] ?? NaN)) {
        weakestOfLine[line] = place.marginChange;
        learntOfLine[line] = learnt?.shareAt(found) ?? 0;
      }
      const { peakToNextMmPerS = Infinity, toNextMm = 0 } = place;
      if (peakToNextMmPerS < atSpeedShare * work.setMmPerS) {
        [runs, runMm] = [runs + 1, runMm + toNextMm];
        fastest = Math.max(fastest, peakToNextMmPerS);
      }
    }
  });
  return {
    count: places.length,
    places,
    withVerdict,
    neverAtSpeed: { runs, lengthMm: runMm, fastestMmPerS: fastest },
    weakestOfLine,
    learntOfLine,
  };
};

const partsToPromise = (
  { parts }: DrawingInParts,
  { weakestOfLine, learntOfLine }: Slowed,
): readonly PartToPromise[] =>
  parts.map(({ cutMm, lines }) => {
    let [marginChange, learntShare] = [0, 0];
    for (const i of lines) {
      if ((weakestOfLine[i] ?? NaN) >= marginChange) continue;
      [marginChange, learntShare] = [weakestOfLine[i] ?? NaN, learntOfLine[i] ?? NaN];
    }
    return { cutMm, marginChange, learntShare };
  });

/** In the order of the drawing, travels included. */
const timeOf = (
  lines: readonly LineToProve[],
  { speedMmPerS, passes }: Setting,
  known: MotionValues | undefined,
): Pick<DrawingProof, 'time' | 'motion'> => {
  const moves = lines.map(({ points, passes: own }): JobMove => ({
    kind: 'cut',
    points,
    speedMmPerS,
    passes: own * passes,
  }));
  const { motion, ...time } = timeBand(known, (values) => wholeJobTime(moves, values).seconds);
  return { time, motion };
};

/** What is remarkable of the setting itself, whatever the drawing. */
const settingRemarks = (
  { evidence, study }: Fit,
  setting: Setting,
  work: BeamWork | null,
): readonly DrawingRemark[] => {
  const { powerPct, minPowerPct = powerPct, speedMmPerS, passes } = setting;
  const remarks: DrawingRemark[] = [];
  if (overdrives(study.machine, setting))
    remarks.push({
      code: 'proof-overdrives',
      params: { powerPct, ratedPct: Number(powerLimit(study.machine).powerPct.toFixed(1)) },
    });
  if (work === null) remarks.push({ code: 'proof-power-not-known', params: { powerPct } });
  const startMmPerS = study.machine.powerRampStartMmPerS ?? 0;
  if (minPowerPct < powerPct && speedMmPerS <= startMmPerS) {
    remarks.push({ code: 'proof-below-start-speed', params: { speedMmPerS, startMmPerS } });
  }
  const fastest = fastestOutAt(evidence, powerPct) ?? 0;
  if (passes === 1 && speedMmPerS > fastest + 1e-9) {
    remarks.push({
      code: 'proof-faster-than-any-out',
      params: { fastestMmPerS: Number(fastest.toFixed(1)), powerPct },
    });
  }
  return remarks;
};
