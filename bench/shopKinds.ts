import { seededRandom } from '../src/num/seededRandom.ts';
import {
  ordinaryTraits,
  virtualWorkshop,
  type VirtualCell,
  type WorkshopTraits,
} from '../src/core/virtual/virtualWorkshop.ts';
import { fit, type Fit } from '../src/core/cutmodel/fit.ts';
import type { CutStudy, StudyCell } from '../src/core/cutmodel/cutStudy.ts';
import { nearestStep } from '../src/core/machine/speedSteps.ts';

/** A kind of invented workshop, by the traits in which it differs from an ordinary one. */
export interface ShopKind {
  readonly name: string;
  readonly change: Partial<WorkshopTraits>;
}

/** The ordinary one first; each other kind breaks one thing that the model takes for granted. */
export const shopKinds: readonly ShopKind[] = [
  { name: 'ordinary', change: {} },
  { name: 'logistic scatter', change: { link: 'logistic' } },
  { name: 'heavy tails', change: { link: 'student3' } },
  { name: 'sheets differ by 4 %', change: { sheetSd: 0.04 } },
  { name: 'glue pockets', change: { flawShare: 0.05 } },
  { name: 'grades misread', change: { misreadShare: 0.03 } },
  { name: 'tube drifts by 6 %', change: { driftOverCard: 0.06 } },
  { name: 'wedge of 3 %', change: { wedgePer100Mm: 0.03 } },
  { name: 'scatter grows', change: { scatterGrowth: 1 } },
];

export const traitsOf = (kind: ShopKind, seed: number): WorkshopTraits => ({
  ...ordinaryTraits(seededRandom(seed)),
  ...kind.change,
});

/** What a slip of the hand may do to one card: what is really cut, and what is noted. */
export interface Hand {
  /** Speed that is cut where another was meant; `ladder` holds the card's speeds, slowest first. */
  readonly cutMmPerS?: (meantMmPerS: number, card: number, ladder: readonly number[]) => number;
  /** A shift of a whole card in ln speed. */
  readonly cardShift?: (card: number) => number;
  /** Grades as they are noted. */
  readonly noted?: (cells: readonly StudyCell[], card: number) => readonly StudyCell[];
}

const pitchMm = 22;
const [rungs, columns] = [6, 4];
/** How well a workshop knows its changeover before the first card, sd in ln speed. */
const firstGuessSd = 0.12;
/** Half the width of a ladder, in ln speed: first card, later cards. */
const ladderHalves = [0.35, 0.22, 0.18];

/**
 * Cuts ladders as a workshop does: six speeds at its own power, some cells each, shuffled over the card, a new sheet for
 * each card; the first about what it believes, the next about what the tool then says.
 */
export const cutLadders = (
  traits: WorkshopTraits,
  seed: number,
  cards: number,
  hand: Hand = {},
  cellsOfRung = 2,
): CutStudy => {
  const random = seededRandom(seed * 7919 + 13);
  const shop = virtualWorkshop(traits, seededRandom(seed * 104_729 + 7));
  let study: CutStudy = {
    machine: { maxPowerPct: 90, speedRangeMmPerS: [0.5, 400] },
    stock: { material: traits.material, thicknessMm: traits.thicknessMm },
    cells: [],
    tallies: [],
    promise: { outOf100: 97, surePct: 95, partLengthMm: 60, for: 'batch' },
    ask: { powerPct: traits.typicalPowerPct },
  };
  let middle = traits.v50MmPerS * Math.exp(firstGuessSd * random.normal());
  for (let card = 0; card < cards; card += 1) {
    const half = ladderHalves[card] ?? 0.18;
    const speeds = Array.from({ length: rungs }, (_, i) =>
      nearestStep(middle * Math.exp(half * ((2 * i) / (rungs - 1) - 1))),
    );
    const shift = Math.exp(hand.cardShift?.(card) ?? 0);
    // Rung by rung in random order; the cells of a rung anywhere on the card.
    const meant = random
      .shuffle([...new Set(speeds)])
      .flatMap((speed) => Array.from({ length: cellsOfRung }, () => speed));
    const at = random.shuffle(meant.map((_, i) => i));
    const grades = shop.cutCard(
      meant.map((speed, i): VirtualCell => ({
        powerPct: traits.typicalPowerPct,
        // A sheet that cuts slower is the same as one cut faster.
        speedMmPerS: (hand.cutMmPerS?.(speed, card, speeds) ?? speed) / shift,
        passes: 1,
        xMm: shop.bed.widthMm / 2 + (((at[i] ?? 0) % columns) - (columns - 1) / 2) * pitchMm,
        yMm: shop.bed.heightMm / 2,
      })),
    );
    const cells = meant.map((speedMmPerS, i): StudyCell => ({
      powerPct: traits.typicalPowerPct,
      speedMmPerS,
      passes: 1,
      sheet: `card ${String(card + 1)}`,
      grade: grades[i] ?? 'stays',
    }));
    study = { ...study, cells: [...study.cells, ...(hand.noted?.(cells, card) ?? cells)] };
    if (card < cards - 1) {
      middle = fit(study).decision.v50Quantile(traits.typicalPowerPct, 0.5) ?? middle;
    }
  }
  return study;
};

/** Three ladders cut without a slip, and what the model makes of them. */
export const knownShop = (traits: WorkshopTraits, seed: number): Fit =>
  fit(cutLadders(traits, seed, 3));
