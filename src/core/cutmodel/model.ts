import type { RatePrior, ScalePrior } from './priorScales.ts';

/**
 * The through-cut model as numbers: what its parameters are and what was observed.
 *
 *     m = a + b·x − d·t + q·ln n − κ·c + α(air) + u(batch) + w(sheet) − ln v      the margin
 *     P(out) = F(m/σ)ᴸ    P(out or hangs) = F((m+κ·c+g)/σ)ᴸ                L = length over the reference length, ≥ 1
 *     a flaw (λ per metre) makes it hang or stay, half each; a grade is misread with probability ε
 *     in an order's count only so many flaws as are overlooked do; the others are counted as flaws
 *
 * Where only the corners are not through the shape hangs, however little power they had: so κ·c does not enter the
 * second line. x = ln(P/P0), t = ln(h/h0), c = ln(P/power in corners) ≥ 0. Each parameter is written as a function of a standard normal z, so that the prior of the
 * whole vector is N(0, I).
 */
export interface ModelPriors {
  readonly lnV50: NormalPrior;
  readonly powerExponent: NormalPrior;
  readonly lnSigma: NormalPrior;
  /** Or a known width. */
  readonly lnHangBand: NormalPrior | { readonly known: number };
  readonly thicknessExponent: NormalPrior;
  readonly passesExponent: NormalPrior;
  readonly cornersExponent: NormalPrior;
  readonly airSd: number;
  /** Null: no flaws. */
  readonly flawsPerMetre: RatePrior | null;
  /** Null: no such scatter. */
  readonly sheetSd: ScalePrior | null;
  readonly batchSd: ScalePrior | null;
  readonly misreading: number;
  /** The same for a part that was counted in an order. Absent: as for a cell. */
  readonly miscounting?: number;
  /** Of the flaws that a counted part meets, the share that is not seen for what it is and counted by how the part fell. */
  readonly flawsOverlooked?: number;
  /** Only for reference cases that do not bound b; the trade's b is above 0. */
  readonly powerExponentMayBeNegative?: boolean;
}

export interface NormalPrior {
  readonly mean: number;
  readonly sd: number;
}

/** `not-out` is hangs or stays, where nobody said which. */
export type ObservedOutcome = 'out' | 'hangs' | 'stays' | 'not-out' | 'flaw';

/** One or several shapes cut alike that ended alike. */
export interface Observation {
  readonly outcome: ObservedOutcome;
  readonly count: number;
  readonly lnSpeed: number;
  /** ln(P/P0) */
  readonly lnPower: number;
  /** ln(h/h0) */
  readonly lnThickness: number;
  readonly lnPasses: number;
  /** ln(P/power in corners), 0 where they are equal. */
  readonly lnCorners: number;
  /** Length of cut over the reference length, never below 1. */
  readonly lengths: number;
  readonly lengthM: number;
  /** Parts of an order, counted by someone who had a place for flaws. */
  readonly counted: boolean;
  /** Index of the air level, batch and sheet; −1 where it has no term. */
  readonly air: number;
  readonly batch: number;
  readonly sheet: number;
}

/** A normal belief about ln v50 at one power, from a habit. */
export interface HabitBelief extends NormalPrior {
  readonly lnPower: number;
}

export interface Model {
  readonly priors: ModelPriors;
  readonly observations: readonly Observation[];
  readonly habit?: HabitBelief;
  readonly airLevels: number;
  readonly batches: number;
  readonly sheets: number;
}

/** Where each parameter stands in z; −1 where the model has no such parameter. */
export interface Layout {
  readonly size: number;
  readonly lnV50: number;
  readonly powerExponent: number;
  readonly lnSigma: number;
  readonly lnHangBand: number;
  readonly flaws: number;
  readonly sheetSd: number;
  readonly batchSd: number;
  readonly thicknessExponent: number;
  readonly passesExponent: number;
  readonly cornersExponent: number;
  /** First of `airLevels` places, and so on. */
  readonly air: number;
  readonly batch: number;
  readonly sheet: number;
}

/** Gives places only to the parameters that some observation depends on, and to those that every promise needs. */
export const parameterLayout = (model: Model): Layout => {
  let size = 0;
  const place = (wanted: boolean, count = 1): number => {
    if (!wanted || count === 0) return -1;
    const first = size;
    size += count;
    return first;
  };
  const { priors, observations } = model;
  const lnSigma = place(true);
  const lnV50 = place(true);
  const powerExponent = place(true);
  const sheetSd = place(priors.sheetSd !== null);
  const lnHangBand = place(!('known' in priors.lnHangBand));
  const flaws = place(priors.flawsPerMetre !== null);
  const thicknessExponent = place(observations.some((o) => o.lnThickness !== 0));
  const passesExponent = place(observations.some((o) => o.lnPasses !== 0));
  const cornersExponent = place(observations.some((o) => o.lnCorners !== 0));
  const batchSd = place(priors.batchSd !== null && model.batches > 0);
  const air = place(model.airLevels > 0, model.airLevels);
  const batch = place(batchSd >= 0, model.batches);
  const sheet = place(sheetSd >= 0 && model.sheets > 0, model.sheets);
  return {
    size,
    lnV50,
    powerExponent,
    lnSigma,
    lnHangBand,
    flaws,
    sheetSd,
    batchSd,
    thicknessExponent,
    passesExponent,
    cornersExponent,
    air,
    batch,
    sheet,
  };
};
