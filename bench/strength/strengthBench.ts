import { normalQuantile } from '../../src/num/normal.ts';
import {
  allSheets,
  firstCard,
  materials,
  sayings,
  straddles,
  thicknessesMm,
  tubesW,
  type Luck,
  type Saying,
  type SheetAndTube,
} from './straddles.ts';

/** Evenly through machines; people's choice of a slow setting runs through its own range beside it, in another order. */
const lucks = (machines: number): readonly Luck[] =>
  Array.from({ length: machines }, (_, i) => ({
    machine: normalQuantile((i + 0.5) / machines),
    person: normalQuantile((((7 * i) % machines) + 0.5) / machines),
  }));

/** The share of first cards that straddle the changeover, 0–1. */
export const straddleShare = (
  sheets: readonly SheetAndTube[],
  said: Saying,
  machinesEach: number,
): number => {
  const tried = sheets.flatMap((sheet) =>
    lucks(machinesEach).map((luck) => straddles(sheet, said, luck)),
  );
  return tried.filter(Boolean).length / tried.length;
};

const machinesEach = 40;
const pct = (share: number): string => `${(100 * share).toFixed(0).padStart(3)} %`;

const headings: Readonly<Record<Saying, string>> = {
  watts: 'watts said',
  'slow-cut': 'a slow cut said',
  nothing: 'nothing said',
};

/** How often a first card straddles the changeover, over a table of plausible machines and sheets. ~1 min. */
export function* strengthBench(): Generator<string> {
  yield `First cards that straddle the changeover   ${sayings.map((said) => headings[said].padStart(16)).join('')}`;
  const line = (name: string, sheets: readonly SheetAndTube[]): string =>
    `${name.padEnd(42)} ${sayings.map((said) => pct(straddleShare(sheets, said, machinesEach)).padStart(16)).join('')}`;
  yield line('all', allSheets);
  for (const tubeW of tubesW)
    yield line(
      `${String(tubeW)} W`,
      allSheets.filter((sheet) => sheet.tubeW === tubeW),
    );
  for (const thicknessMm of thicknessesMm)
    yield line(
      `${String(thicknessMm)} mm`,
      allSheets.filter((sheet) => sheet.thicknessMm === thicknessMm),
    );
  for (const material of materials)
    yield line(
      material,
      allSheets.filter((sheet) => sheet.material === material),
    );
  yield '';
  yield 'First card for plywood, mm/s';
  for (const [tubeW, thicknessMm, powerPct] of [
    [40, 3, 30],
    [130, 3, 30],
    [80, 10, 30],
    [80, 10, 60],
  ] as const)
    for (const said of sayings) {
      const sheet = { material: 'plywood', thicknessMm, tubeW, powerPct };
      const name = `${String(tubeW)} W at ${String(powerPct)} %, ${String(thicknessMm)} mm, ${headings[said]}`;
      yield `${name.padEnd(42)} ${(firstCard(sheet, said)?.speedsMmPerS ?? []).join(', ')}`;
    }
}
