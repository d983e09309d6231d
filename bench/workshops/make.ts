import {
  ordinaryTraits,
  virtualWorkshop,
  type WorkshopTraits,
} from '../../src/core/virtual/virtualWorkshop.ts';
import { referenceLengthMm } from '../../src/core/reading/promise.ts';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import type { OpenedWorkshop, WorkshopModule } from '../workshop.ts';

interface Boards {
  /** Every card is cut from the same board, and the speed is for that board. */
  readonly oneBoard: boolean;
}

/** Makes a bench workshop from the ordinary one with some traits changed. The card's cells lie round the bed's middle. */
export const workshopWith = (
  name: string,
  change: (ordinary: WorkshopTraits) => Partial<WorkshopTraits>,
  { oneBoard }: Boards = { oneBoard: false },
): Required<Omit<WorkshopModule, 'history'>> => ({
  name,
  oneBoard,
  flawRate: traitsOf(change, seededRandom(1)).flawShare,
  openWorkshop: (seed): OpenedWorkshop => {
    const random = seededRandom(seed);
    const traits = oneBoard
      ? onOneBoard(traitsOf(change, random), random)
      : traitsOf(change, random);
    const shop = virtualWorkshop(traits, random);
    return {
      machine: { maxPowerPct: 90, speedRangeMmPerS: [0.5, 200] },
      stock: {
        material: traits.material,
        nominalThicknessMm: traits.nominalThicknessMm,
        measuredThicknessMm: [traits.thicknessMm],
      },
      bed: shop.bed,
      cutCard: (cells) =>
        cells.some(({ lengthMm }) => lengthMm !== undefined)
          ? shop.cutParts(cells.map((cell) => ({ lengthMm: referenceLengthMm, ...cell })))
          : shop.cutCard(cells),
      trueOutShare: shop.trueOutShare,
      trueThroughShare: shop.trueThroughShare,
      fastestKeeping: shop.fastestKeeping,
      typicalPowerPct: traits.typicalPowerPct,
      sigmaForTheReferee: traits.sigma,
      truthForTheBound: traits,
    };
  },
});

/** A workshop that has but one board is one whose changeover is that board's, and whose sheets do not differ. */
const onOneBoard = (traits: WorkshopTraits, random: SeededRandom): WorkshopTraits => ({
  ...traits,
  v50MmPerS: traits.v50MmPerS * Math.exp(traits.sheetSd * random.normal()),
  sheetSd: 0,
});

const traitsOf = (
  change: (ordinary: WorkshopTraits) => Partial<WorkshopTraits>,
  random: SeededRandom,
): WorkshopTraits => {
  const ordinary = ordinaryTraits(random);
  return { ...ordinary, ...change(ordinary) };
};
