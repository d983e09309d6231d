import { cardsDisagree } from '../../src/core/cutmodel/cardsDisagree.ts';
import type { StudyCell } from '../../src/core/cutmodel/cutStudy.ts';
import { fit } from '../../src/core/cutmodel/fit.ts';
import { mistypedIn } from '../../src/core/cutmodel/mistyped.ts';
import { gradeOdds, remarksOn } from '../../src/core/cutmodel/remarks.ts';
import type { WorkshopTraits } from '../../src/core/virtual/virtualWorkshop.ts';
import { seededRandom } from '../../src/num/seededRandom.ts';
import { cutLadders, shopKinds, traitsOf } from '../shopKinds.ts';
import { noSlip, slipKinds, type SlipKind } from './slips.ts';

/** The three things that may be said of slips, and for each the cells it names. */
const signs = ['look again', 'behaves like', 'cards disagree'] as const;
type Said = Readonly<Record<(typeof signs)[number], readonly StudyCell[]>>;

/** One study of two cards with a slip on the second: what is said, and whether it names what was touched. */
const play = (kind: SlipKind, traits: WorkshopTraits, seed: number) => {
  const { hand, isTouched } = kind.slip(seededRandom(seed * 31 + 5));
  const study = cutLadders(traits, seed, 2, hand, kind.cellsOfRung);
  const fitted = fit(study);
  const odds = gradeOdds(fitted);
  const at = (indices: readonly number[]): readonly StudyCell[] =>
    indices.flatMap((i) => study.cells[i] ?? []);
  const apart = cardsDisagree(fitted);
  const said: Said = {
    'look again': at(
      remarksOn(fitted, odds).flatMap((remark) =>
        remark.kind === 'look-again' ? [remark.cellIndex] : [],
      ),
    ),
    'behaves like': at(mistypedIn(fitted, odds).flatMap(({ cells }) => cells)),
    'cards disagree': study.cells.filter(({ sheet }) => sheet === apart?.odd),
  };
  return {
    anything: signs.some((sign) => said[sign].length > 0),
    rightly: signs.some((sign) => said[sign].some(isTouched)),
    said,
    isTouched,
  };
};

type Played = ReturnType<typeof play>;

const pct = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;

const line = (name: string, played: readonly Played[], withRight: boolean): string => {
  const count = (test: (one: Played) => boolean): string =>
    pct(played.filter(test).length, played.length);
  const each = signs.map((sign) => {
    const right = count(({ said, isTouched }) => said[sign].some(isTouched));
    return `${sign} ${count(({ said }) => said[sign].length > 0)}${withRight ? ` (rightly ${right})` : ''}`;
  });
  const all = `anything ${count(({ anything }) => anything)}`;
  const right = withRight ? `, named by any of them ${count(({ rightly }) => rightly)}` : '';
  return `  ${String(played.length)} × ${name}: ${each.join(', ')}; ${all}${right}`;
};

/**
 * Slips of the hand planted in invented workshops, measured: how often each of the three signs is given, and how often
 * without cause. Two ladders of six speeds, 12 cells each where nothing else is said.
 */
export const mistakesBench = function* (studies: number): Generator<string> {
  yield 'no slip: everything said is a false alarm, or a flaw or misreading that did happen (target of each sign: 2 in 100)';
  const clean = { flawShare: 0, misreadShare: 0 };
  const everywhere: Played[] = [];
  for (const kind of shopKinds) {
    const played = Array.from({ length: studies }, (_, k) =>
      play(noSlip, traitsOf(kind, 3000 + k), 3000 + k),
    );
    everywhere.push(...played);
    yield line(kind.name, played, false);
  }
  yield line('all kinds', everywhere, false);
  const [ordinary] = shopKinds;
  if (ordinary === undefined) return;
  const plant = (kind: SlipKind, change: Partial<WorkshopTraits>) =>
    Array.from({ length: studies }, (_, k) =>
      play(kind, { ...traitsOf(ordinary, 7000 + k), ...change }, 7000 + k),
    );
  yield line('ordinary, neither flaws nor misreadings', plant(noSlip, clean), false);
  yield line('the same, cards of 24', plant({ ...noSlip, cellsOfRung: 4 }, clean), false);
  yield 'slips on the second of two cards, ordinary workshops with neither flaws nor misreadings';
  for (const kind of slipKinds) yield line(kind.name, plant(kind, clean), true);
};
