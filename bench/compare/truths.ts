import type { StudyCell } from '../../src/core/cutmodel/cutStudy.ts';
import { priorMedianV50MmPerS, priors } from '../../src/core/cutmodel/priors.ts';
import type { TwoConditions } from '../../src/core/compare/twoConditions.ts';
import type { Grade } from '../../src/core/reading/grade.ts';
import {
  ordinaryTraits,
  virtualWorkshop,
  type WorkshopTraits,
} from '../../src/core/virtual/virtualWorkshop.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';

/** An invented workshop and what the other condition truly gains in it, in ln speed. */
export interface Truth {
  readonly traits: WorkshopTraits;
  readonly gain: number;
}

/** Drawn from the very priors of the model: here its probabilities must be right. */
export const fromThePriors = (random: SeededRandom): Truth => {
  const usual = ordinaryTraits(random);
  const { links, lnSigma, lnHangBand, flawsPerMetreMean, sheetSdScale } = priors;
  const chosen = random.uniform();
  const link =
    chosen < links.normal
      ? ('normal' as const)
      : chosen < links.normal + links.logistic
        ? ('logistic' as const)
        : ('student3' as const);
  const powerPct = usual.typicalPowerPct;
  const flawsPerMetre = -flawsPerMetreMean * Math.log(random.uniform());
  return {
    gain: priors.airSd * random.normal(),
    traits: {
      ...usual,
      v50MmPerS:
        priorMedianV50MmPerS(usual.material, usual.thicknessMm, powerPct / 100) *
        Math.exp(priors.lnV50Sd * random.normal()),
      link,
      sigma: Math.exp(lnSigma.mean + lnSigma.sd * random.normal()),
      hangBand: Math.exp(lnHangBand.mean + lnHangBand.sd * random.normal()),
      flawShare: 1 - Math.exp(-flawsPerMetre * 0.06),
      misreadShare: priors.misreading,
      sheetSd: Math.abs(sheetSdScale * random.normal()),
    },
  };
};

/** An ordinary workshop, and a gain that is given. */
export const ordinaryWith =
  (gain: number) =>
  (random: SeededRandom): Truth => ({ traits: ordinaryTraits(random), gain });

/** How the cells are laid: on one sheet together, or each condition on so many sheets of its own. */
export interface Laying {
  readonly name: string;
  readonly cellsASide: number;
  readonly sheets: 'together' | 'own';
}

/** Cuts both conditions at these speeds, `cellsEach` at each, as one card (`together`) or as one card each. */
export const cutBoth = (
  { traits, gain }: Truth,
  speeds: readonly number[],
  cellsEach: number,
  sheets: Laying['sheets'],
  random: SeededRandom,
): Pick<TwoConditions, 'one' | 'other'> => {
  const shop = virtualWorkshop(traits, random);
  const powerPct = traits.typicalPowerPct;
  const asked = speeds.flatMap((speed) => Array.from({ length: cellsEach }, () => speed));
  const under = (lnGain: number) =>
    asked.map((speed) => ({
      powerPct,
      // A condition that gains cuts a cell as if it were slower by as much.
      speedMmPerS: speed * Math.exp(-lnGain),
      passes: 1,
      xMm: 450,
      yMm: 300,
    }));
  const cellsOf = (grades: readonly Grade[], sheet: string): readonly StudyCell[] =>
    asked.map((speedMmPerS, i) => ({
      powerPct,
      speedMmPerS,
      passes: 1,
      sheet,
      grade: grades[i] ?? 'stays',
    }));
  if (sheets === 'own')
    return {
      one: cellsOf(shop.cutCard(under(0)), 'first'),
      other: cellsOf(shop.cutCard(under(gain)), 'second'),
    };
  const grades = shop.cutCard([...under(0), ...under(gain)]);
  return {
    one: cellsOf(grades.slice(0, asked.length), 'common'),
    other: cellsOf(grades.slice(asked.length), 'common'),
  };
};

/** Six rungs about where the changeovers are believed to lie, which is wrong by some per cent. */
export const sixRungs = ({ traits, gain }: Truth, random: SeededRandom): readonly number[] => {
  const middle = traits.v50MmPerS * Math.exp(gain / 2 + 0.06 * random.normal());
  const step = middle < 5 ? 0.1 : 0.5;
  return Array.from({ length: 6 }, (_, i) => {
    const speed = middle * Math.exp(0.22 * ((2 * i) / 5 - 1));
    return Math.max(0.1, Number((Math.round(speed / step) * step).toFixed(1)));
  });
};

export const asTwoConditions = (
  { traits }: Truth,
  cut: Pick<TwoConditions, 'one' | 'other'>,
): TwoConditions => ({
  differs: 'lens',
  machine: { maxPowerPct: 100, speedRangeMmPerS: [0.1, 500] },
  stock: { material: traits.material, thicknessMm: traits.thicknessMm },
  worthPct: 2,
  tellPct: 5,
  ...cut,
});
