import { designCard } from '../../src/core/card/designCard.ts';
import { expectedV50 } from '../../src/core/cutmodel/priors.ts';
import { undescribedMachine } from '../../src/core/machine/machine.ts';
import { defaultPromise } from '../../src/core/reading/promise.ts';
import { cardRequestFor } from '../../src/core/study/cardRequestFor.ts';
import { normalQuantile } from '../../src/num/normal.ts';

const tubesW = [40, 50, 60, 80, 100, 130] as const;
const thicknessesMm = [2, 3, 4, 6, 8, 10] as const;
const materials = ['plywood', 'mdf', 'acrylic', 'cardboard', 'veg-tanned leather'] as const;
/** Machines of one strength differ by so much in ln speed: optics, focus, air, wood. From memory, common practice. */
const machineSd = 0.4;
const machinesEach = 20;

interface Sheet {
  readonly material: string;
  readonly thicknessMm: number;
  readonly tubeW: number;
}

/** What a workshop runs that sheet at, %. From memory, common practice. */
const usualPct = (thicknessMm: number): number => (thicknessMm <= 4 ? 30 : 60);

/** Whether the speeds of the first card lie on both sides of the changeover; false where no card can be made. */
const straddles = (
  { material, thicknessMm, tubeW }: Sheet,
  z: number,
  isSaid: boolean,
): boolean => {
  const powerPct = usualPct(thicknessMm);
  const machine = { ...undescribedMachine, ...(isSaid ? { nominalW: tubeW } : {}) };
  const stock = { material, thicknessMm };
  const study = { machine, stock, cells: [], tallies: [], promise: defaultPromise, ask: {} };
  const designed = designCard(cardRequestFor(study, { code: 'K7QX', powerPct }));
  if (!designed.ok) return false;
  const at = designed.value.card.believed?.powerPct ?? powerPct;
  const { v50MmPerS } = expectedV50({ ...stock, deliveredFraction: at / 100, nominalW: tubeW });
  const truth = v50MmPerS * Math.exp(machineSd * z);
  const speeds = designed.value.card.rungs.map(({ setting }) => setting.speedMmPerS);
  return Math.min(...speeds) < truth && truth < Math.max(...speeds);
};

const shareOf = (sheets: readonly Sheet[], isSaid: boolean): number => {
  const tried = sheets.flatMap((sheet) =>
    Array.from({ length: machinesEach }, (_, i) =>
      straddles(sheet, normalQuantile((i + 0.5) / machinesEach), isSaid),
    ),
  );
  return tried.filter(Boolean).length / tried.length;
};

const pct = (share: number): string => `${(100 * share).toFixed(0).padStart(3)} %`;

/** How often a first card straddles the changeover, over a table of plausible machines and sheets. ~10 s. */
export function* strengthBench(): Generator<string> {
  const all = tubesW.flatMap((tubeW) =>
    thicknessesMm.flatMap((thicknessMm) =>
      materials.map((material): Sheet => ({ material, thicknessMm, tubeW })),
    ),
  );
  yield 'First cards that straddle the changeover   strength said   not said';
  const line = (name: string, sheets: readonly Sheet[]): string =>
    `${name.padEnd(42)} ${pct(shareOf(sheets, true)).padStart(13)} ${pct(shareOf(sheets, false)).padStart(10)}`;
  yield line('all', all);
  for (const tubeW of tubesW)
    yield line(
      `${String(tubeW)} W`,
      all.filter((sheet) => sheet.tubeW === tubeW),
    );
  for (const thicknessMm of thicknessesMm)
    yield line(
      `${String(thicknessMm)} mm`,
      all.filter((sheet) => sheet.thicknessMm === thicknessMm),
    );
  for (const material of materials)
    yield line(
      material,
      all.filter((sheet) => sheet.material === material),
    );
}
