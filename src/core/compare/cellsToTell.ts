import { leastWhole } from '../../num/leastWhole.ts';
import { normalCdf, normalQuantile } from '../../num/normal.ts';
import { links } from '../cutmodel/links.ts';
import type { Posterior } from '../cutmodel/posterior.ts';
import { priors } from '../cutmodel/priors.ts';
import { referenceLengthMm } from '../reading/promise.ts';
import { effectPriorSd } from './effectBetween.ts';

/** What a plan of cells is worth at one point of the posterior. */
export interface PlanPoint {
  /** Fisher information about ln v50 of one cell, averaged over the rungs, for each side. */
  readonly one: number;
  readonly other: number;
  readonly sheetSd: number;
}

const flawOf = (perMetre: number): number => 1 - Math.exp((-perMetre * referenceLengthMm) / 1000);

/** Rungs to be judged, and the difference that they are to tell. */
export interface Plan {
  readonly lnSpeeds: readonly number[];
  /** ln v50 half way between the conditions, at the power of the rungs. */
  readonly middle: (point: number) => number;
  /** What the other condition is supposed to gain, in ln speed. */
  readonly lnGain: number;
}

/**
 * What each point of a posterior says of a plan, the changeovers of the two conditions standing half the gain below and
 * above the middle. Give a thinned posterior: O(points · rungs).
 */
export const planPoints = (
  posterior: Posterior,
  { lnSpeeds, middle, lnGain }: Plan,
): readonly PlanPoint[] =>
  Array.from({ length: posterior.count }, (_, i): PlanPoint => {
    const asked = {
      sigma: posterior.sigma[i] ?? NaN,
      hangBand: posterior.hangBand[i] ?? NaN,
      flaw: flawOf(posterior.flawsPerMetre[i] ?? NaN),
      cdf: links[posterior.link[i] ?? NaN]?.quickCdf ?? normalCdf,
    };
    const mean = (level: number): number =>
      lnSpeeds.reduce((sum, lnSpeed) => sum + informationOfCell(level - lnSpeed, asked), 0) /
      lnSpeeds.length;
    return {
      one: mean(middle(i) - lnGain / 2),
      other: mean(middle(i) + lnGain / 2),
      sheetSd: posterior.sheetSd[i] ?? NaN,
    };
  });

interface Asked {
  readonly sigma: number;
  readonly hangBand: number;
  readonly flaw: number;
  readonly cdf: (x: number) => number;
}

/** Σ (dp/dm)²/p over the three grades, flaws and misreading in it. */
const informationOfCell = (margin: number, asked: Asked): number => {
  const step = 1e-3 * asked.sigma;
  const [low, at, high] = [margin - step, margin, margin + step].map((m) => gradesAt(m, asked));
  if (low === undefined || at === undefined || high === undefined) return 0;
  return at.reduce((sum, p, k) => {
    const slope = ((high[k] ?? NaN) - (low[k] ?? NaN)) / (2 * step);
    return sum + slope ** 2 / p;
  }, 0);
};

const gradesAt = (margin: number, { sigma, hangBand, flaw, cdf }: Asked): readonly number[] => {
  const out = cdf(margin / sigma);
  const through = cdf((margin + hangBand) / sigma);
  const sound = [out, through - out, 1 - through];
  return sound.map((share, k) => {
    const read = (1 - flaw) * share + (k === 0 ? 0 : flaw / 2);
    return read * (1 - 1.5 * priors.misreading) + priors.misreading / 2;
  });
};

export interface TellWish {
  /** ln(1 + the difference that is to be told from nothing). */
  readonly lnGain: number;
  /** Probability of telling it. */
  readonly power: number;
  /** What is known of the effect already, as an information. */
  readonly known: number;
  /** Whether each condition is cut on a sheet of its own. */
  readonly ownSheets: boolean;
}

/** More than this a side and no number is given. */
const mostCellsASide = 400;

/**
 * Least number of cells a side so that, where the other condition does gain `lnGain`, the 95 % interval leaves out nothing
 * with probability `power`; null where more than 400 would be needed. With J the information about the
 * effect, n cells a side give J = (1/n·I₁ + 1/n·I₂ + 2ω²)⁻¹ (the sheets' share only with a sheet each); with the prior's
 * τ = 1/0.15² the posterior mean is normal about J·gain/(J+τ) with sd √J/(J+τ), so
 *
 *     P(told) = Φ((J·gain − 1.96·√(J+τ))/√J),   averaged over what is known of σ, g, ω, the link and the changeover.
 *
 * Held against whole simulated cards by `npm run -s bench -- compare`.
 */
export const cellsToTell = (points: readonly PlanPoint[], wish: TellWish): number | null => {
  const told = (cells: number): boolean => chanceToTell(points, cells, wish) >= wish.power;
  if (wish.known > 0 && told(0)) return 0;
  return told(mostCellsASide) ? leastWhole(mostCellsASide, told) : null;
};

/** Probability that a plan of so many cells a side tells the difference. */
export const chanceToTell = (
  points: readonly PlanPoint[],
  cellsASide: number,
  { lnGain, known, ownSheets }: Omit<TellWish, 'power'>,
): number => {
  const priorInformation = effectPriorSd ** -2;
  const sum = points.reduce((total, { one, other, sheetSd }) => {
    const scatter = 1 / (cellsASide * one) + 1 / (cellsASide * other);
    const information = known + 1 / (scatter + (ownSheets ? 2 * sheetSd ** 2 : 0));
    const needed = z95 * Math.sqrt(information + priorInformation);
    return total + normalCdf((information * lnGain - needed) / Math.sqrt(information));
  }, 0);
  return sum / points.length;
};

const z95 = normalQuantile(0.975);
