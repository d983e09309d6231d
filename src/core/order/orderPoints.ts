import { levelOf } from '../cutmodel/decisionOn.ts';
import type { Fit } from '../cutmodel/fit.ts';
import { links } from '../cutmodel/links.ts';
import { meanSdOf, thinned, type Posterior } from '../cutmodel/posterior.ts';
import { priors } from '../cutmodel/priors.ts';
import { cornerPowerPct, type Setting } from '../machine/setting.ts';
import type { PromiseWish } from '../reading/promise.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';

/** The posterior as an order sees it: its points, and how the order's sheets differ at each. */
export interface OrderPoints {
  readonly count: number;
  /** Sums to 1. */
  readonly weight: Float64Array;
  /** Scatter of shapes: what points are kept in order of where some of them stand for all. */
  readonly sigma: Float64Array;
  /** Standard deviations in ln speed: of what all sheets of the order share, and of each sheet by itself. */
  readonly orderSd: Float64Array;
  readonly sheetSd: Float64Array;
  /** Null where the power says nothing. */
  readonly at: (setting: Setting, partLengthMm: number) => FateAt | null;
  /** Whether anything is known of how many flaws there are; without it parts are taken to be sound. */
  readonly flawsLearnt: boolean;
}

/**
 * What becomes of one part at one point, where its sheet cuts `shift` faster in ln speed than the mean of them: shares
 * that add up to 1 with those that stay. Those that meet a flaw are among hangs and stays, half each; those that weld back hang.
 */
export interface Fate {
  out: number;
  hangs: number;
  /** Meets a flaw: hangs or stays for that alone. */
  flaw: number;
}

/** Writes into `into`, so that inner loops allocate nothing. */
export type FateAt = (point: number, shift: number, into: Fate) => void;

/** Below this share of its prior's spread something is known of the rate of flaws. */
const learntBelow = 0.5;

/** More points than these are a surprising card's; fewer stand for them. */
const mostPoints = 4000;

/** Whether the readings tell how many flaws a metre of cut meets. */
export const knowsFlaws = (posterior: Posterior): boolean => {
  if (posterior.model.priors.flawsPerMetre === null) return false;
  const { sd } = meanSdOf(posterior, (i) => posterior.flawsPerMetre[i] ?? NaN);
  return sd < learntBelow * priors.flawsPerMetreMean;
};

/** Makes a fit ready to be asked about orders for `what`: this sheet, sheets of this batch, or of a batch not seen yet. */
export const orderPoints = (
  { compiled, posterior }: Pick<Fit, 'compiled' | 'posterior'>,
  promise: PromiseWish,
  most = mostPoints,
): OrderPoints => {
  const few = posterior.count > most ? thinned(posterior, most) : posterior;
  const { count, weight, sigma } = few;
  const none = new Float64Array(count);
  const flawsLearnt = knowsFlaws(posterior);
  const levels = new Map<number, Float64Array>();
  const levelFor = (passes: number): Float64Array => {
    const known = levels.get(passes) ?? levelOf(compiled, few, promise, passes);
    levels.set(passes, known);
    return known;
  };
  return {
    count,
    weight,
    sigma,
    flawsLearnt,
    orderSd: promise.for === 'newBatch' ? few.batchSd : none,
    sheetSd: promise.for === 'sheet' ? none : few.sheetSd,
    at: (setting, partLengthMm) => {
      const lnPower = compiled.lnPowerOf(setting.powerPct);
      const lnLeast = compiled.lnPowerOf(Math.min(setting.powerPct, cornerPowerPct(setting)));
      if (lnPower === null || lnLeast === null) return null;
      const level = levelFor(setting.passes);
      const lnSpeed = Math.log(setting.speedMmPerS);
      const { welding } = compiled;
      const lnCorners = Math.max(0, lnPower - lnLeast);
      const lengths = referenceLengthsIn(partLengthMm);
      const open = setting.passes === 1 ? (welding?.openAt(setting, lengths) ?? 1) : 1;
      const metres = flawsLearnt ? partLengthMm / 1000 : 0;
      const whole = (share: number): number => (lengths === 1 ? share : share ** lengths);
      return (point, shift, into) => {
        const link = links[few.link[point] ?? NaN];
        const scatter = sigma[point] ?? NaN;
        const through =
          (level[point] ?? NaN) + (few.powerExponent[point] ?? NaN) * lnPower + shift - lnSpeed;
        const margin = through - (few.cornersExponent[point] ?? NaN) * lnCorners;
        const out = open * whole(link?.quickCdf(margin / scatter) ?? NaN);
        const comesOff = whole(
          link?.quickCdf((through + (few.hangBand[point] ?? NaN)) / scatter) ?? NaN,
        );
        const sound = Math.exp(-(few.flawsPerMetre[point] ?? NaN) * metres);
        into.out = sound * out;
        into.flaw = 1 - sound;
        into.hangs = sound * Math.max(0, comesOff - out) + 0.5 * into.flaw;
      };
    },
  };
};
