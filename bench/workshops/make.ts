import {
  ordinaryTraits,
  virtualWorkshop,
  type WorkshopTraits,
} from '../../src/core/virtual/virtualWorkshop.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import type { OpenedWorkshop, WorkshopModule } from '../workshop.ts';

/** Makes a bench workshop from the ordinary one with some traits changed. The card's cells lie round the bed's middle. */
export const workshopWith = (
  name: string,
  change: (ordinary: WorkshopTraits) => Partial<WorkshopTraits>,
): WorkshopModule => ({
  name,
  openWorkshop: (seed): OpenedWorkshop => {
    const random = seededRandom(seed);
    const ordinary = ordinaryTraits(random);
    const traits = { ...ordinary, ...change(ordinary) };
    const shop = virtualWorkshop(traits, random);
    return {
      machine: { maxPowerPct: 90, speedRangeMmPerS: [0.5, 200] },
      stock: {
        material: traits.material,
        nominalThicknessMm: traits.nominalThicknessMm,
        measuredThicknessMm: [traits.thicknessMm],
      },
      bed: shop.bed,
      cutCard: shop.cutCard,
      trueOutShare: shop.trueOutShare,
      fastestKeeping: shop.fastestKeeping,
      typicalPowerPct: traits.typicalPowerPct,
      sigmaForTheReferee: traits.sigma,
      truthForTheBound: traits,
    };
  },
});
