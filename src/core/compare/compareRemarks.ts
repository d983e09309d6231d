import { airKey } from '../machine/air.ts';
import { problemOf, type Problem } from '../problem.ts';
import type { StudyCell } from '../cutmodel/cutStudy.ts';
import { meanSdOf } from '../cutmodel/posterior.ts';
import { effectPriorSd, type EffectBetween } from './effectBetween.ts';
import { gradedIn, sheetOf, type TwoConditions } from './twoConditions.ts';

/** `common`: every read cell lies on a sheet that was cut under both; `own`: none does. */
export type SheetsCommon = 'common' | 'partly' | 'own';

export const sheetsOf = (one: readonly StudyCell[], other: readonly StudyCell[]): SheetsCommon => {
  const [ones, others] = [one, other].map((cells) => new Set(cells.map(sheetOf)));
  const all = [...new Set([...(ones ?? []), ...(others ?? [])])];
  const common = all.filter((sheet) => ones?.has(sheet) === true && others?.has(sheet) === true);
  if (common.length === all.length) return 'common';
  return common.length === 0 ? 'own' : 'partly';
};

/** The effect is said to rest on its prior where its spread is still more than this share of the prior's. */
const restsOnPrior = 0.7;

/** What stands beside the figure, the most pressing first. */
export const compareRemarks = (
  two: TwoConditions,
  { posterior, effect }: EffectBetween,
  sheets: SheetsCommon,
): readonly Problem[] => {
  const [one, other] = [gradedIn(two.one), gradedIn(two.other)];
  const all = [...one, ...other];
  const { sd } = meanSdOf(posterior, (i) => effect[i] ?? NaN);
  const too = differsToo(two);
  const mixed = mixedSides(two);
  return [
    ...(all.every(({ grade }) => grade === 'out') ? [problemOf('compare-all-out')] : []),
    ...(all.every(({ grade }) => grade !== 'out') ? [problemOf('compare-none-out')] : []),
    ...(too.length > 0 ? [problemOf('compare-differs-too', { what: too.join(', ') })] : []),
    ...(two.differs !== 'batch' && differ(one, other, ({ batch = '' }) => batch)
      ? [problemOf('compare-batches-too')]
      : []),
    ...(two.differs !== 'batch' && sheets === 'own' ? [problemOf('compare-own-sheets')] : []),
    ...(sheets === 'partly' ? [problemOf('compare-partly-own-sheets')] : []),
    ...(mixed.length > 0 ? [problemOf('compare-mixed-side', { what: mixed.join(', ') })] : []),
    ...(two.otherMachine === undefined ? [] : [problemOf('compare-plain-power')]),
    ...(sd > restsOnPrior * effectPriorSd ? [problemOf('compare-rests-on-prior')] : []),
  ];
};

const keys = {
  air: (cell: StudyCell) => airKey(cell.air),
  thickness: ({ thicknessMm }: StudyCell) => String(thicknessMm),
} as const;

const valuesOf = (cells: readonly StudyCell[], key: (cell: StudyCell) => string): string =>
  [...new Set(cells.map(key))].sort().join('|');

const differ = (
  one: readonly StudyCell[],
  other: readonly StudyCell[],
  key: (cell: StudyCell) => string,
): boolean => valuesOf(one, key) !== valuesOf(other, key);

/** What differs between the sides beside what is compared: the figure cannot tell them apart. */
const differsToo = (two: TwoConditions): readonly string[] => {
  const [one, other] = [gradedIn(two.one), gradedIn(two.other)];
  return [
    ...(two.differs !== 'air' && differ(one, other, keys.air) ? ['air'] : []),
    ...(differ(one, other, keys.thickness) ? ['thickness'] : []),
    ...(two.differs !== 'machine' && two.otherMachine !== undefined ? ['machine'] : []),
  ];
};

/** What is not the same all over a side that should be one condition. */
const mixedSides = (two: TwoConditions): readonly string[] =>
  [gradedIn(two.one), gradedIn(two.other)].some((cells) => new Set(cells.map(keys.air)).size > 1)
    ? ['air']
    : [];
