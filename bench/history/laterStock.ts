import {
  ordinaryTraits,
  virtualWorkshop,
  type VirtualWorkshop,
  type WorkshopTraits,
} from '../../src/core/virtual/virtualWorkshop.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import type { WorkshopModule } from '../workshop.ts';
import { workshopWith } from '../workshops/make.ts';

/** Three cards of every stock before: speeds over a guessed changeover. */
const cardSpeeds = [
  [0.65, 0.8, 1, 1.25],
  [0.75, 0.85, 0.95, 1.1],
  [0.7, 0.8, 0.9, 1],
] as const;

/** How far a stock's changeover, its scatter and the guess of it lie from those of the workshop: sd in ln. */
const between = { changeover: 0.08, scatter: 0.08, guess: 0.1 } as const;

/**
 * A workshop that has cut `before` stocks of one material, a batch each, 24 cells in three cards, and now opens the next. The
 * present stock of a seed is the same whatever came before it.
 */
export const laterStock = (
  before: number,
  change: (ordinary: WorkshopTraits) => Partial<WorkshopTraits> = () => ({}),
): WorkshopModule => ({
  ...workshopWith(`stock ${String(before + 1)}`, change),
  ...(before === 0
    ? {}
    : {
        history: (seed: number) => {
          const ordinary = ordinaryTraits(seededRandom(seed));
          const traits = { ...ordinary, ...change(ordinary) };
          const random = seededRandom(seed * 104_729 + 5);
          const { material, thicknessMm } = traits;
          return {
            version: 1,
            machine: { maxPowerPct: 90, speedRangeMmPerS: [0.5, 200] },
            stock: { material, thicknessMm },
            cells: Array.from({ length: before }, (_, k) => {
              const own: WorkshopTraits = {
                ...traits,
                v50MmPerS: traits.v50MmPerS * Math.exp(between.changeover * random.normal()),
                sigma: traits.sigma * Math.exp(between.scatter * random.normal()),
              };
              const guessMmPerS = own.v50MmPerS * Math.exp(between.guess * random.normal());
              return cellsOf(virtualWorkshop(own, random), guessMmPerS, `stock ${String(k + 1)}`);
            }).flat(),
            tallies: [],
            promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
            ask: {},
          };
        },
      }),
});

const cellsOf = (shop: VirtualWorkshop, guessMmPerS: number, batch: string) => {
  const powerPct = shop.traits.typicalPowerPct;
  return cardSpeeds.flatMap((shares, k) => {
    const cells = shares.flatMap((share) => {
      const speedMmPerS = Math.round(2 * share * guessMmPerS) / 2;
      const cell = { powerPct, speedMmPerS, passes: 1, xMm: shop.bed.widthMm / 2, yMm: 300 };
      return [cell, cell];
    });
    const grades = shop.cutCard(cells);
    return cells.map(({ speedMmPerS }, i) => ({
      powerPct,
      speedMmPerS,
      batch,
      sheet: `${batch}, card ${String(k + 1)}`,
      grade: grades[i] ?? 'stays',
    }));
  });
};
