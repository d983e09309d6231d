import type { BeamWork } from './beamWork.ts';
import type { LineInTime, Passed } from './lineInTime.ts';
import { slowedStretches, type SlowedStretch } from './slowedStretches.ts';

/** The figures of one window on the line, about a corner or an end. */
export interface Window {
  /** Its middle, in mm from the line's start. */
  readonly atMm: number;
  /** Mean power over its time, as a share of full power: delivered, not typed. */
  readonly powerShare: number;
  /** Mean speed as a share of the set speed. */
  readonly speedShare: number;
}

/** What slowing down does at one place of a line. */
export interface SlowedPlace extends SlowedStretch {
  /** `end`: where the line begins or ends. */
  readonly kind: 'corner' | 'end';
  readonly weakest: Window;
  /** By how much the margin changes there, in ln speed: below 0 it cuts as if it ran faster. */
  readonly marginChange: number;
  readonly hottestAtMm: number;
  /** Energy over a mm there, as a multiple of that at full speed. */
  readonly energyRatio: number;
}

/**
 * Length over which the weakest power is taken: about the width of a kerf in thin sheet, below which heat from the
 * neighbouring places evens things out. Common practice, no source.
 */
export const blurMm = 0.2;

/** Length over which heat gathers at a tip. Common practice, no source. */
export const tipMm = 0.5;

/** Where the beam is as good as off a margin is not a figure: this share of full power stands for less. */
const leastPowerShare = 1e-3;

/** Windows that are tried over one stretch at most. */
const mostWindows = 400;

/**
 * What slowing down does to a margin: b·ln(mean power / full power) − ln(mean speed / set speed).
 *
 * @param powerExponent b of the cut model: how fast the changeover rises with ln(power).
 */
export const marginChangeOf = (
  { powerShare, speedShare }: Pick<Window, 'powerShare' | 'speedShare'>,
  powerExponent: number,
): number => powerExponent * Math.log(Math.max(leastPowerShare, powerShare)) - Math.log(speedShare);

/**
 * Every corner and end of a line at which the head is slowed, with its weakest and its hottest window. O(knots), and some
 * tens of windows a place.
 */
export const slowedPlaces = (
  line: LineInTime,
  work: BeamWork,
  powerExponent: number,
  loops: boolean,
): readonly SlowedPlace[] =>
  placesOn(line, work, powerExponent, slowedStretches(line.speeds, work.setMmPerS, loops));

/** What slowing down does on these stretches of a line. Some tens of windows a stretch. */
export const placesOn = (
  line: LineInTime,
  work: BeamWork,
  powerExponent: number,
  stretches: readonly SlowedStretch[],
): readonly SlowedPlace[] =>
  stretches.map((stretch) => {
    const { weakest, marginChange } = weakestOf(line, work, powerExponent, stretch);
    const { hottestAtMm, energyRatio } = hottestOf(line, work, stretch);
    const kind = isEnd(stretch, line.lengthMm) ? 'end' : 'corner';
    // One spread and no more: there may be hundreds of thousands.
    return { ...stretch, kind, weakest, marginChange, hottestAtMm, energyRatio };
  });

const isEnd = ({ atMm, leastMmPerS }: SlowedStretch, lengthMm: number): boolean =>
  leastMmPerS === 0 && (atMm <= 0 || atMm >= lengthMm);

const weakestOf = (
  line: LineInTime,
  work: BeamWork,
  powerExponent: number,
  { fromMm, toMm, atMm }: SlowedStretch,
): Pick<SlowedPlace, 'weakest' | 'marginChange'> => {
  const middle = (fromMm + toMm - blurMm) / 2;
  const [start, end] = toMm - fromMm > blurMm ? [fromMm, toMm - blurMm] : [middle, middle];
  let weakest: Window = { atMm, powerShare: 1, speedShare: 1 };
  let marginChange = Infinity;
  const look = (from: number): void => {
    const found = windowOf(line.over(from, from + blurMm), work, from + blurMm / 2);
    const change = marginChangeOf(found, powerExponent);
    if (change < marginChange) [weakest, marginChange] = [found, change];
  };
  const step = Math.max(blurMm / 10, (end - start) / mostWindows);
  for (let at = start; at < end; at += step) look(at);
  look(end);
  return { weakest, marginChange };
};

const windowOf = (passed: Passed, { setMmPerS }: BeamWork, atMm: number): Window => {
  if (!(passed.seconds > 0)) return { atMm, powerShare: 1, speedShare: 1 };
  return {
    atMm,
    powerShare: passed.workS / passed.seconds,
    speedShare: passed.lengthMm / passed.seconds / setMmPerS,
  };
};

/** Windows that hold the slowest place, or lie within the stretch where that is longer. */
const hottestOf = (
  line: LineInTime,
  { setMmPerS }: BeamWork,
  { fromMm, toMm, atMm }: SlowedStretch,
): Pick<SlowedPlace, 'hottestAtMm' | 'energyRatio'> => {
  const start = Math.min(fromMm, atMm - tipMm);
  const end = Math.max(toMm - tipMm, atMm);
  const step = Math.max(tipMm / 10, (end - start) / mostWindows);
  let [hottestAtMm, energyRatio] = [atMm, 0];
  const look = (from: number): void => {
    const { lengthMm, workS } = line.over(from, from + tipMm);
    // Beyond the ends of a line there is no more of it.
    if (lengthMm < Math.min(tipMm, line.lengthMm) - 1e-9) return;
    const ratio = (workS * setMmPerS) / lengthMm;
    if (ratio > energyRatio) [hottestAtMm, energyRatio] = [from + tipMm / 2, ratio];
  };
  for (let at = start; at < end; at += step) look(at);
  look(end);
  return { hottestAtMm, energyRatio };
};
