import { defaultPromise } from '../src/core/reading/promise.ts';
import type { CutStudy, StudyCell } from '../src/core/cutmodel/cutStudy.ts';

/** A study of 3 mm plywood on an undescribed machine, for tests: says only what differs. */
export const plainStudy = (
  given: Partial<Omit<CutStudy, 'cells'>> & {
    readonly cells?: readonly (Omit<StudyCell, 'passes'> & { readonly passes?: number })[];
  } = {},
): CutStudy => ({
  machine: { maxPowerPct: 100, speedRangeMmPerS: [1, 100] },
  stock: { material: 'plywood', thicknessMm: 3 },
  tallies: [],
  promise: defaultPromise,
  ask: {},
  ...given,
  cells: (given.cells ?? []).map((cell) => ({ passes: 1, ...cell })),
});
