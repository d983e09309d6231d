import { designCard } from '../../src/core/card/designCard.ts';
import { expectedV50, priors } from '../../src/core/cutmodel/priors.ts';
import { undescribedMachine, type Machine } from '../../src/core/machine/machine.ts';
import { defaultPromise } from '../../src/core/reading/promise.ts';
import { cardRequestFor } from '../../src/core/study/cardRequestFor.ts';

export const tubesW = [40, 50, 60, 80, 100, 130] as const;
export const thicknessesMm = [2, 3, 4, 6, 8, 10] as const;
export const materials = ['plywood', 'mdf', 'acrylic', 'cardboard', 'veg-tanned leather'] as const;
/** Machines of one strength differ by so much in ln speed: optics, focus, air, wood. From memory, common practice. */
export const machineSd = 0.4;

/** What people call slow differs by .3 in ln speed, and the sheet that it cut from this one by .2. From memory, common practice. */
const personSd = Math.hypot(0.3, 0.2);

/** A sheet on the tube that really cuts it, whatever anybody said of it. */
export interface SheetAndTube {
  readonly material: string;
  readonly thicknessMm: number;
  readonly tubeW: number;
  /** Absent: what a workshop usually runs it at. */
  readonly powerPct?: number;
}

export const allSheets: readonly SheetAndTube[] = tubesW.flatMap((tubeW) =>
  thicknessesMm.flatMap((thicknessMm) =>
    materials.map((material): SheetAndTube => ({ material, thicknessMm, tubeW })),
  ),
);

/** What was said of the strength before the first card. */
export const sayings = ['watts', 'slow-cut', 'nothing'] as const;
export type Saying = (typeof sayings)[number];

/** What a workshop runs that sheet at, %. From memory, common practice. */
const usualPct = (thicknessMm: number): number => (thicknessMm <= 4 ? 30 : 60);

/** Machine and person, each in standard deviations from the middle. */
export interface Luck {
  readonly machine: number;
  /** How slow the setting is that somebody names. */
  readonly person: number;
}

/** The settings of the first card, and the changeover in truth; undefined where no card can be made. */
export const firstCard = (
  { material, thicknessMm, tubeW, powerPct = usualPct(thicknessMm) }: SheetAndTube,
  said: Saying,
  luck: Luck = { machine: 0, person: 0 },
): { readonly speedsMmPerS: readonly number[]; readonly truthMmPerS: number } | undefined => {
  const stock = { material, thicknessMm };
  const truthAt = (pct: number): number =>
    expectedV50({ ...stock, deliveredFraction: pct / 100, nominalW: tubeW }).v50MmPerS *
    Math.exp(machineSd * luck.machine);
  const slowMmPerS = truthAt(powerPct) * Math.exp(-priors.slowCut.shift + personSd * luck.person);
  const strength: Readonly<Record<Saying, Partial<Machine>>> = {
    watts: { nominalW: tubeW },
    'slow-cut': { slowCut: { ...stock, powerPct, speedMmPerS: slowMmPerS } },
    nothing: {},
  };
  const machine = { ...undescribedMachine, ...strength[said] };
  const study = { machine, stock, cells: [], tallies: [], promise: defaultPromise, ask: {} };
  const designed = designCard(cardRequestFor(study, { code: 'K7QX', powerPct }));
  if (!designed.ok) return undefined;
  const { card } = designed.value;
  return {
    speedsMmPerS: card.rungs.map(({ setting }) => setting.speedMmPerS).sort((a, b) => a - b),
    truthMmPerS: truthAt(card.rungs[0]?.setting.powerPct ?? powerPct),
  };
};

/** Whether the speeds of the first card lie on both sides of the changeover; false where no card can be made. */
export const straddles = (sheet: SheetAndTube, said: Saying, luck: Luck): boolean => {
  const first = firstCard(sheet, said, luck);
  if (first === undefined) return false;
  const { speedsMmPerS, truthMmPerS } = first;
  return Math.min(...speedsMmPerS) < truthMmPerS && truthMmPerS < Math.max(...speedsMmPerS);
};
