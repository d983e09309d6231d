import { isOfSameStock, type KeptStock, type StockOnMachine } from '../book/keptStock.ts';
import type { Machine } from '../machine/machine.ts';
import { settingKey, type Setting } from '../machine/setting.ts';
import type { MachineTest, Unkept } from '../machineTests.ts';
import { andThen, done, type Outcome, type Problem } from '../problem.ts';
import { acceptMaterial } from '../stock/acceptMaterial.ts';
import type { ToneReading } from './evenShades.ts';
import { markKinds, type Mark, type MarkKind } from './mark.ts';
import { limitsBeside, markProblem } from './markLimits.ts';

/** A mark that was found good on one sheet, beside the cut that it is made with. */
export interface MarkTest extends MachineTest {
  readonly cut: Setting;
  readonly stock: KeptStock;
  readonly mark: Mark;
  /** The strip that it was found on; absent: it was tried by itself. */
  readonly strip?: StripRead;
  /** How light a strip of shades came out, by whoever had it read when the mark was kept. */
  readonly shades?: ShadesOfStrip;
}

/** A strip as it was marked, and its steps, from 0, that were the palest seen and the one chosen. */
export interface StripRead {
  readonly settings: readonly Setting[];
  readonly palest: number;
  readonly wanted: number;
}

/** A strip of shades as it was marked and read, and how many even ones were wanted of it. */
export interface ShadesOfStrip {
  readonly settings: readonly Setting[];
  readonly lineSpacingMm: number;
  /** CIE L* of each step; null: not read. */
  readonly lightness: readonly (number | null)[];
  readonly by: ToneReading;
  readonly count: number;
}

/** A mark, before anybody keeps it. */
export type UnkeptMarkTest = Unkept<MarkTest>;

/**
 * A mark with what is to be said of its material. Refuses: a refused material; and, on a machine that is known, what goes
 * beyond a limit of machine or tube, or may cut where it should only mark.
 */
export const markTestSays = (
  test: Pick<MarkTest, 'cut' | 'stock' | 'mark'>,
  machine?: Machine,
): Outcome<{ readonly mark: Mark; readonly remarks: readonly Problem[] }> =>
  andThen(acceptMaterial(test.stock), (remarks) => {
    const beyond =
      machine === undefined ? undefined : markProblem(test.mark, limitsBeside(test, machine));
    return beyond === undefined
      ? done({ mark: test.mark, remarks })
      : { ok: false, problem: beyond };
  });

/** A mark that is kept. */
export interface KeptMark {
  readonly test: MarkTest;
  /** Why nobody is to run it any more: the machine was kept to less since, or it came from elsewhere. */
  readonly beyond?: Problem;
}

/** The latest mark of each kind. */
export type KeptMarks = { readonly [Kind in MarkKind]?: KeptMark };

/**
 * The marks of a material and nominal thickness on a machine, whatever batch and whatever cut they were kept beside: the latest
 * of each kind, held to the machine as it is by now. `tests`: the latest first. `machine`: absent, it is not known.
 */
export const marksOf = (
  of: StockOnMachine,
  tests: readonly MarkTest[],
  machine: Machine | undefined,
): KeptMarks => {
  const here = tests.filter((test) => isOfSameStock(test, of));
  return Object.fromEntries(
    markKinds.flatMap((kind) => {
      const latest = here.find(({ mark }) => mark.kind === kind);
      if (latest === undefined) return [];
      const says = markTestSays(latest, machine);
      return [[kind, { test: latest, ...(says.ok ? {} : { beyond: says.problem }) }]];
    }),
  );
};

/** One and the same for strips of shades whose steps are the same. */
export const shadesKey = ({
  lineSpacingMm,
  settings,
}: Pick<ShadesOfStrip, 'lineSpacingMm' | 'settings'>): string =>
  [String(lineSpacingMm), ...settings.map(settingKey)].join(' ');

/**
 * The latest that was read on this very strip, on a sheet of this material and thickness: what was read on another says nothing
 * of it. `tests`: the latest first.
 */
export const shadesKept = (
  of: StockOnMachine,
  strip: Pick<ShadesOfStrip, 'lineSpacingMm' | 'settings'>,
  tests: readonly MarkTest[],
): ShadesOfStrip | undefined =>
  tests.find(
    (test) =>
      test.shades !== undefined &&
      shadesKey(test.shades) === shadesKey(strip) &&
      isOfSameStock(test, of),
  )?.shades;
