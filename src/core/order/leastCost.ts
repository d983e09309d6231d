import { goodPartCost, type GoodPartCost } from '../cost/goodPartCost.ts';
import type { CostAssumptions } from '../cost/partCost.ts';
import { fastestOutAt } from '../cutmodel/evidence.ts';
import type { Fit } from '../cutmodel/fit.ts';
import type { LinePoint } from '../cutmodel/fitAnswer.ts';
import { describePower, powerLimit } from '../tube/deliveredPower.ts';
import type { Setting } from '../machine/setting.ts';
import { nextStep, stepNotSlower } from '../machine/speedSteps.ts';
import type { Fate, OrderPoints } from './orderPoints.ts';

/** The expected shares of parts at a setting, over all that is known. */
export interface OrderShares {
  readonly out: number;
  readonly hangs: number;
  readonly stays: number;
}

/** A setting with what a good part costs at it. */
export interface PricedSetting {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly shares: OrderShares;
  readonly cost: GoodPartCost;
}

/** Points below this weight move no share that is shown. */
const negligible = 1e-7;

/** Even places of a sheet among its fellows with their normal weights: the trapezoid rule, which converges fast here. */
const places = Array.from({ length: 9 }, (_, i) => 0.8 * (i - 4));
const placeWeights = places.map((z) => Math.exp(-0.5 * z * z));
const weightOfAll = placeWeights.reduce((a, b) => a + b, 0);

/** Mean shares of the fates at a setting, over what is known and over sheets. O(points). */
export const sharesAt = (
  points: OrderPoints,
  setting: Setting,
  partLengthMm: number,
): OrderShares | null => {
  const fateAt = points.at(setting, partLengthMm);
  if (fateAt === null) return null;
  const fate: Fate = { out: 0, hangs: 0, flaw: 0 };
  let [out, hangs] = [0, 0];
  const add = (point: number, shift: number, weight: number): void => {
    fateAt(point, shift, fate);
    out += weight * fate.out;
    hangs += weight * fate.hangs;
  };
  for (let i = 0; i < points.count; i += 1) {
    const weight = points.weight[i] ?? NaN;
    if (weight < negligible) continue;
    const sd = Math.hypot(points.orderSd[i] ?? NaN, points.sheetSd[i] ?? NaN);
    if (sd === 0) add(i, 0, weight);
    else {
      for (let k = 0; k < places.length; k += 1) {
        add(i, sd * (places[k] ?? NaN), (weight * (placeWeights[k] ?? NaN)) / weightOfAll);
      }
    }
  }
  return { out, hangs, stays: Math.max(0, 1 - out - hangs) };
};

export interface CostQuestion {
  readonly found: Pick<Fit, 'study' | 'evidence'>;
  readonly points: OrderPoints;
  readonly partLengthMm: number;
  readonly assumed: CostAssumptions;
}

/** What a good part costs at a setting: the cut alone, the knife, what is lost, tube and sheet. Null: the power says nothing. */
export const priceAt = (
  { found, points, partLengthMm, assumed }: CostQuestion,
  setting: Setting,
): PricedSetting | null => {
  const shares = sharesAt(points, setting, partLengthMm);
  if (shares === null) return null;
  const { machine } = found.study;
  const { powerPct, speedMmPerS, passes } = setting;
  const { currentMa } = describePower(machine, powerPct);
  return {
    powerPct,
    speedMmPerS,
    shares,
    cost: goodPartCost(
      {
        seconds: (partLengthMm * passes) / speedMmPerS,
        shareOfRated:
          currentMa === undefined || machine.ratedCurrentMa === undefined
            ? powerPct / 100
            : currentMa / machine.ratedCurrentMa,
        knifeShare: shares.hangs,
        lostShare: shares.stays,
      },
      assumed,
    ),
  };
};

/** Points of the posterior with which to search. */
export const pointsToSearch = 400;

/** Speeds tried at one power, at most: evenly through those that people type. */
const mostSpeeds = 40;

/**
 * The setting at which a good part costs least, among the speeds that people type: at the asked power, or else at every
 * power of the line up to the highest at which something came out. Never faster than something came out at that power or
 * a lower one, never slower than the slowest cell: beyond what was cut nobody knows what it costs. Null: nothing to
 * choose among. O(powers · speeds · points):
 * {@link pointsToSearch} are enough, since the cost is flat about its least.
 */
export const leastCost = (
  question: CostQuestion,
  line: readonly LinePoint[],
): PricedSetting | null => {
  const { study, evidence } = question.found;
  const tried = Math.max(...evidence.out.map((spot) => spot.powerPct));
  const powers =
    study.ask.powerPct === undefined
      ? line.map((point) => point.powerPct).filter((powerPct) => powerPct <= tried + 1e-9)
      : [Math.min(study.ask.powerPct, Math.floor(powerLimit(study.machine).powerPct + 1e-9))];
  let best: PricedSetting | null = null;
  for (const powerPct of powers) {
    for (const speedMmPerS of speedsToTry(question.found, powerPct)) {
      const priced = priceAt(question, { powerPct, speedMmPerS, passes: 1 });
      if (priced && (best === null || priced.cost.total < best.cost.total)) best = priced;
    }
  }
  return best;
};

/** Speeds between the slowest cell and the fastest that came out; both within what the machine can run. */
const speedsToTry = (
  { study, evidence }: CostQuestion['found'],
  powerPct: number,
): readonly number[] => {
  const [least, most] = study.machine.speedRangeMmPerS;
  const cap = Math.min(most, fastestOutAt(evidence, powerPct) ?? 0);
  const speeds: number[] = [];
  const from = Math.max(least, evidence.slowestMmPerS ?? least);
  for (let speed = stepNotSlower(from); speed <= cap + 1e-9; speed = nextStep(speed)) {
    speeds.push(speed);
  }
  const every = Math.ceil(speeds.length / mostSpeeds);
  return speeds.filter((_, i) => (speeds.length - 1 - i) % every === 0);
};
