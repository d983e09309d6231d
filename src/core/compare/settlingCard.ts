import type { Setting } from '../machine/setting.ts';
import { nearestStep } from '../machine/speedSteps.ts';
import { knownPower } from '../cutmodel/knownPower.ts';
import { meanSdOf, thinned } from '../cutmodel/posterior.ts';
import { cellsToTell, chanceToTell, planPoints } from './cellsToTell.ts';
import { effectPriorSd, type EffectBetween } from './effectBetween.ts';
import type { TwoConditions } from './twoConditions.ts';

/** The card that would settle it: the same rungs under both conditions, side by side on one sheet. */
export interface SettlingCard {
  /** At one power, about the changeovers of both conditions; air is left for the condition. */
  readonly settings: readonly Setting[];
  /** Cells a side altogether, as if nothing had been cut yet; null: more than 400. */
  readonly cellsASide: number | null;
  /** Cells a side beside what has been cut; 0: what was cut is enough. */
  readonly moreASide: number | null;
  /** Cells a side where each condition has a sheet of its own. */
  readonly onOwnSheets: number | null;
}

/** The wanted probability of telling the difference where there is one. */
const wantedPower = 0.8;

/** How far the rungs reach either way in ln speed, and how many there are. Of these the plan that tells most is taken. */
const reaches = [0.04, 0.06, 0.09, 0.13, 0.18, 0.25];
const rungCounts = [4, 5, 6];
const leastRungs = 3;
/** Points over which scatter, hanging band, changeovers and link are averaged: more move the result by 1 cell in 50. */
const pointsAsked = 300;
/** Plans are ranked at this many cells a side: which is best hardly depends on it. */
const cellsToJudgeBy = 40;

/**
 * Rungs and numbers of cells that would tell `tellPct` from nothing with probability 0.8, by what is known of scatter, hanging
 * band and changeover now. ~20 ms.
 */
export const settlingCard = (two: TwoConditions, between: EffectBetween): SettlingCard => {
  const { posterior, effect, compiled, lnV50Of } = between;
  const commonestPct = commonest([...two.one, ...two.other].map((cell) => cell.powerPct));
  const { powerPct, lnPower } = knownPower(compiled, commonestPct);
  const few = thinned(posterior, pointsAsked);
  const middle = (i: number): number =>
    (lnV50Of('one', few, i) + lnV50Of('other', few, i)) / 2 +
    (few.powerExponent[i] ?? NaN) * lnPower;
  const lnMiddle = meanSdOf(few, middle).mean;
  const lnGain = Math.log(1 + two.tellPct / 100);
  const wish = { lnGain, power: wantedPower, known: 0, ownSheets: false };
  const [best] = rungCounts
    .flatMap((count) => reaches.map((reach) => speedsAbout(two, lnMiddle, count, reach)))
    .filter((speeds) => speeds.length >= leastRungs)
    .map((speeds) => {
      const lnSpeeds = speeds.map((speed) => Math.log(speed));
      const points = planPoints(few, { lnSpeeds, middle, lnGain });
      return { speeds, points, chance: chanceToTell(points, cellsToJudgeBy, wish) };
    })
    .toSorted((a, b) => b.chance - a.chance);
  if (best === undefined)
    return { settings: [], cellsASide: null, moreASide: null, onOwnSheets: null };
  const { sd } = meanSdOf(posterior, (i) => effect[i] ?? NaN);
  const known = Math.max(0, sd ** -2 - effectPriorSd ** -2);
  return {
    settings: best.speeds.map((speedMmPerS) => ({ powerPct, speedMmPerS, passes: 1 })),
    cellsASide: cellsToTell(best.points, wish),
    moreASide: cellsToTell(best.points, { ...wish, known }),
    onOwnSheets: cellsToTell(best.points, { ...wish, ownSheets: true }),
  };
};

/** Speeds that a person types, evenly spaced in ln, each once, within the range of both machines. */
const speedsAbout = (
  { machine, otherMachine = machine }: TwoConditions,
  lnMiddle: number,
  count: number,
  reach: number,
): readonly number[] => {
  const least = Math.max(machine.speedRangeMmPerS[0], otherMachine.speedRangeMmPerS[0]);
  const most = Math.min(machine.speedRangeMmPerS[1], otherMachine.speedRangeMmPerS[1]);
  const speeds = Array.from({ length: count }, (_, i) =>
    nearestStep(Math.exp(lnMiddle + reach * ((2 * i) / (count - 1) - 1))),
  );
  return [...new Set(speeds)].filter((speed) => speed >= least && speed <= most);
};

/** The first of the commonest. */
const commonest = (values: readonly number[]): number => {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const most = Math.max(...counts.values());
  return [...counts].find(([, count]) => count === most)?.[0] ?? 0;
};
