import { pairedTest } from '../../num/pairedTest.ts';
import { fisherTest, type TwoByTwo } from '../../num/twoByTwo.ts';
import type { StudyCell } from '../cutmodel/cutStudy.ts';
import { cornerPowerPct } from '../machine/setting.ts';
import { referenceLengthMm } from '../reading/promise.ts';
import { gradedIn, type TwoConditions } from './twoConditions.ts';

/** The check that knows no model. `p`: two-sided, exact. */
export type ExactBetween =
  /** Pairs of cells at one setting, of which only those that ended differently say anything. */
  | {
      readonly kind: 'paired';
      readonly pairs: number;
      readonly onlyOneOut: number;
      readonly onlyOtherOut: number;
      readonly unpaired: number;
      readonly p: number;
    }
  /** Cells at a single setting: out and not, of each side. */
  | { readonly kind: 'unpaired'; readonly table: TwoByTwo; readonly p: number }
  /** All pairs ended alike. */
  | { readonly kind: 'no-difference-seen'; readonly pairs: number }
  | { readonly kind: 'no-setting-in-common' };

/**
 * McNemar's exact test of pairs of cells at one setting, where two or more settings were cut under both conditions; Fisher's
 * exact test where there is one. Cells of a setting are paired in the order in which they stand, whatever came out, so a
 * pair is as likely either way round where the condition makes no difference. Out against not out; spoilt cells are left out.
 */
export const exactBetween = ({
  one,
  other,
}: Pick<TwoConditions, 'one' | 'other'>): ExactBetween => {
  const [ones, others] = [bySetting(one), bySetting(other)];
  const shared = [...ones].flatMap(([key, cells]) => {
    const match = others.get(key);
    return match === undefined ? [] : [{ one: cells, other: match }];
  });
  const [first] = shared;
  if (first === undefined) return { kind: 'no-setting-in-common' };
  if (shared.length === 1) return unpaired(first.one, first.other);
  const pairs = shared.flatMap((at) =>
    at.one.slice(0, at.other.length).map((a, i) => [isOut(a), isOut(at.other[i])] as const),
  );
  const onlyOneOut = pairs.filter(([a, b]) => a && !b).length;
  const onlyOtherOut = pairs.filter(([a, b]) => b && !a).length;
  const test = pairedTest(onlyOneOut, onlyOtherOut);
  if (test === null) return { kind: 'no-difference-seen', pairs: pairs.length };
  return {
    kind: 'paired',
    pairs: pairs.length,
    onlyOneOut,
    onlyOtherOut,
    unpaired: gradedIn(one).length + gradedIn(other).length - 2 * pairs.length,
    p: test.twoSided,
  };
};

const unpaired = (one: readonly StudyCell[], other: readonly StudyCell[]): ExactBetween => {
  const out = (cells: readonly StudyCell[]): number => cells.filter(isOut).length;
  const [a, c] = [out(one), out(other)];
  const table = { a, b: one.length - a, c, d: other.length - c };
  return { kind: 'unpaired', table, p: fisherTest(table).twoSided };
};

const isOut = (cell: StudyCell | undefined): boolean => cell?.grade === 'out';

/** What a cell was cut at, apart from the condition itself. */
const bySetting = (cells: readonly StudyCell[]): ReadonlyMap<string, readonly StudyCell[]> => {
  const found = new Map<string, StudyCell[]>();
  for (const cell of gradedIn(cells)) {
    const { powerPct, speedMmPerS, passes, shapeLengthMm = referenceLengthMm } = cell;
    const key = [powerPct, cornerPowerPct(cell), speedMmPerS, passes, shapeLengthMm].join('/');
    found.set(key, [...(found.get(key) ?? []), cell]);
  }
  return found;
};
