import type { SeededRandom } from '../../num/seededRandom.ts';
import { links, type Link } from '../cutmodel/links.ts';
import { priorMedianV50MmPerS } from '../cutmodel/priors.ts';
import { grades, type Grade } from '../reading/grade.ts';
import { referenceLengthMm } from '../reading/promise.ts';
import { referenceLengthsIn } from '../reading/referenceLengths.ts';

/** How one invented workshop cuts: what a real one never tells. */
export interface WorkshopTraits {
  readonly material: string;
  readonly nominalThicknessMm: number;
  readonly thicknessMm: number;
  readonly typicalPowerPct: number;
  /** Speed at which half the sound reference shapes come out at the typical power, mm/s. */
  readonly v50MmPerS: number;
  readonly powerExponent: number;
  /** Below this setting the tube does not fire, and the law bends towards it. */
  readonly firingPct: number;
  readonly link: Link['name'];
  readonly sigma: number;
  readonly hangBand: number;
  /** Share of reference shapes that meet a glue pocket. */
  readonly flawShare: number;
  /** Share of grades noted wrongly. */
  readonly misreadShare: number;
  /** Loss of speed from the bed's left edge to its right, as a share. */
  readonly tiltAcrossBed: number;
  /** Gain of thickness from the card's left to its right, as a share per 100 mm. */
  readonly wedgePer100Mm: number;
  /** Loss of speed from the first cell of a card to its last, as a share. */
  readonly driftOverCard: number;
  readonly sheetSd: number;
  /** Scatter grows with (speed/v50)^this. */
  readonly scatterGrowth: number;
}

export interface VirtualCell {
  readonly powerPct: number;
  readonly speedMmPerS: number;
  readonly passes: number;
  readonly xMm: number;
  readonly yMm: number;
}

/** A part of an order, cut at one setting. */
export interface VirtualPart extends VirtualCell {
  /** Length of its cut. It comes out when each reference length of it does. */
  readonly lengthMm: number;
}

/** How a part ended: a flaw that is seen for what it is leaves it spoilt, one that is overlooked passes for a grade. */
export type PartEnd = Grade | 'spoilt';

export interface VirtualWorkshop {
  readonly traits: WorkshopTraits;
  readonly bed: { readonly widthMm: number; readonly heightMm: number };
  /** Cuts a card from a new sheet of the same batch, in the order given. */
  readonly cutCard: (cells: readonly VirtualCell[]) => Grade[];
  /** Cuts parts of an order from a new sheet of the same batch, in the order given. */
  readonly cutParts: (parts: readonly VirtualPart[]) => PartEnd[];
  /** True share of sound shapes of this length that come out, averaged over sheets, at the middle of the bed. */
  readonly trueOutShare: TrueShare;
  /** The same of those that come out or hang. */
  readonly trueThroughShare: TrueShare;
  /** Fastest speed at a power that keeps the share; by bisection to 1e-6 relative. */
  readonly fastestKeeping: (share: number, powerPct: number, lengthMm?: number) => number;
}

/** `lengthMm` absent: the reference shape's. */
export type TrueShare = (
  setting: Pick<VirtualCell, 'powerPct' | 'speedMmPerS' | 'passes'>,
  lengthMm?: number,
) => number;

/** How many flaws in five a person who counts parts sees for what they are. */
const flawsSeenInFive = 4;

/** Thickness exponent of every invented workshop; McMillin & Harry (1971) found 1.38. */
const thicknessExponent = 1.3;
const passesExponent = 0.8;
const bed = { widthMm: 900, heightMm: 600 };

/** Plays one workshop. All chance comes from `random`. */
export const virtualWorkshop = (traits: WorkshopTraits, random: SeededRandom): VirtualWorkshop => {
  const link = links.find(({ name }) => name === traits.link);
  if (!link) throw new Error(`no link ${traits.link}`);
  const lnV50 = (powerPct: number, passes: number): number => {
    const above = (pct: number): number => Math.max(1e-3, pct - traits.firingPct);
    return (
      Math.log(traits.v50MmPerS) +
      traits.powerExponent * Math.log(above(powerPct) / above(traits.typicalPowerPct)) +
      passesExponent * Math.log(passes)
    );
  };
  const sigmaAt = (speedMmPerS: number): number =>
    traits.sigma * (speedMmPerS / traits.v50MmPerS) ** traits.scatterGrowth;

  /** The margin of each cell of one sheet before its own noise, in the order of cutting. */
  const levelsOf = (cells: readonly VirtualCell[]): number[] => {
    const sheet = traits.sheetSd * random.normal();
    return cells.map((cell, i) => {
      const across = cell.xMm / bed.widthMm - 0.5;
      return (
        lnV50(cell.powerPct, cell.passes) +
        sheet +
        Math.log(1 - traits.tiltAcrossBed * across) -
        thicknessExponent *
          Math.log(1 + (traits.wedgePer100Mm * (cell.xMm - bed.widthMm / 2)) / 100) +
        Math.log(1 - traits.driftOverCard * (cells.length > 1 ? i / (cells.length - 1) : 0))
      );
    });
  };

  const gradeOfMargin = (margin: number): Grade =>
    margin > 0 ? 'out' : margin > -traits.hangBand ? 'hangs' : 'stays';

  const noted = (grade: Grade): Grade => {
    const misread = random.uniform() < traits.misreadShare;
    const other = random.uniform() < 0.5 ? 0 : 1;
    return misread ? (grades.filter((one) => one !== grade)[other] ?? grade) : grade;
  };

  const cutCard = (cells: readonly VirtualCell[]): Grade[] => {
    const levels = levelsOf(cells);
    return cells.map((cell, i) => {
      const noise = sigmaAt(cell.speedMmPerS) * quantile(link, random.uniform());
      const margin = (levels[i] ?? NaN) + noise - Math.log(cell.speedMmPerS);
      const flawed = random.uniform() < traits.flawShare;
      const flawedHangs = random.uniform() < 0.5;
      return noted(flawed ? (flawedHangs ? 'hangs' : 'stays') : gradeOfMargin(margin));
    });
  };

  const cutParts = (parts: readonly VirtualPart[]): PartEnd[] => {
    const levels = levelsOf(parts);
    return parts.map((part, i) => {
      const lengths = referenceLengthsIn(part.lengthMm);
      // The worst of so many reference lengths: P(it > x) = F(-x)^lengths, F being symmetric.
      const worst = -quantile(link, random.uniform() ** (1 / lengths));
      const margin = (levels[i] ?? NaN) + sigmaAt(part.speedMmPerS) * worst;
      const flawed = random.uniform() < 1 - (1 - traits.flawShare) ** lengths;
      const seen = random.integer(5) < flawsSeenInFive;
      const flawedHangs = random.uniform() < 0.5;
      if (flawed && seen) return 'spoilt';
      return noted(
        flawed
          ? flawedHangs
            ? 'hangs'
            : 'stays'
          : gradeOfMargin(margin - Math.log(part.speedMmPerS)),
      );
    });
  };

  /** Averages F(margin/σ) of all lengths over sheets, for a margin wider by `band`. */
  const shareOver =
    (band: number): TrueShare =>
    ({ powerPct, speedMmPerS, passes }, lengthMm = referenceLengthMm) => {
      const margin = lnV50(powerPct, passes) + band - Math.log(speedMmPerS);
      const sigma = sigmaAt(speedMmPerS);
      const lengths = referenceLengthsIn(lengthMm);
      let sum = 0;
      let weights = 0;
      for (let i = -24; i <= 24; i += 1) {
        const z = i * 0.25;
        const weight = Math.exp(-0.5 * z * z);
        weights += weight;
        sum += weight * link.cdf((margin + traits.sheetSd * z) / sigma) ** lengths;
      }
      return sum / weights;
    };
  const trueOutShare = shareOver(0);
  const trueThroughShare = shareOver(traits.hangBand);

  const fastestKeeping = (share: number, powerPct: number, lengthMm?: number): number => {
    let low = traits.v50MmPerS / 50;
    let high = traits.v50MmPerS * 50;
    for (let step = 0; step < 60; step += 1) {
      const middle = Math.sqrt(low * high);
      const kept = trueOutShare({ powerPct, speedMmPerS: middle, passes: 1 }, lengthMm) >= share;
      if (kept) low = middle;
      else high = middle;
    }
    return low;
  };

  return { traits, bed, cutCard, cutParts, trueOutShare, trueThroughShare, fastestKeeping };
};

/** Draws from a link by bisection of its distribution function. */
const quantile = (link: Link, u: number): number => {
  let low = -400;
  let high = 400;
  for (let step = 0; step < 60; step += 1) {
    const middle = 0.5 * (low + high);
    if (link.cdf(middle) < u) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
};

/** An ordinary workshop drawn at random: near the prior's median, scatter about 8 %. Others change single traits. */
export const ordinaryTraits = (random: SeededRandom): WorkshopTraits => {
  const stocks = [
    { material: 'plywood', nominalThicknessMm: 3 },
    { material: 'plywood', nominalThicknessMm: 4 },
    { material: 'MDF', nominalThicknessMm: 3 },
    { material: 'acrylic', nominalThicknessMm: 3 },
    { material: 'plywood', nominalThicknessMm: 6 },
  ];
  const stock = stocks[random.integer(stocks.length)] ?? {
    material: 'plywood',
    nominalThicknessMm: 3,
  };
  const typicalPowerPct = 26 + random.integer(25);
  const thicknessMm = stock.nominalThicknessMm * (1 + 0.04 * random.normal());
  return {
    ...stock,
    thicknessMm,
    typicalPowerPct,
    v50MmPerS:
      priorMedianV50MmPerS(stock.material, thicknessMm, typicalPowerPct / 100) *
      Math.exp(0.45 * random.normal()),
    powerExponent: 1 + 0.2 * random.normal(),
    firingPct: 0,
    link: 'normal',
    sigma: 0.08 * Math.exp(0.4 * random.normal()),
    hangBand: 0.06 * Math.exp(0.5 * random.normal()),
    flawShare: 0.02,
    misreadShare: 0.005,
    tiltAcrossBed: 0,
    wedgePer100Mm: 0,
    driftOverCard: 0,
    sheetSd: 0.015,
    scatterGrowth: 0,
  };
};
