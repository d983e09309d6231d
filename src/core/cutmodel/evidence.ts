import type { CutStudy, StudyCell } from './cutStudy.ts';

/** What was cut, in the plainest terms: what bounds an answer before any model is asked. */
export interface Evidence {
  /** Settings at which something came out, from cells, tallies and habit. */
  readonly out: readonly {
    readonly powerPct: number;
    readonly speedMmPerS: number;
    readonly passes: number;
  }[];
  readonly graded: number;
  readonly outCells: number;
  readonly notOutCells: number;
  readonly slowestMmPerS: number | null;
  readonly fastestMmPerS: number | null;
  readonly hasTally: boolean;
  readonly hasHabit: boolean;
}

/** A cell of another thickness bounds nothing here: the model carries it over, with its doubt. */
const mostThicknessOff = 0.08;

const isOfThisThickness = (study: CutStudy, cell: StudyCell): boolean =>
  Math.abs((cell.thicknessMm ?? study.stock.thicknessMm) / study.stock.thicknessMm - 1) <=
  mostThicknessOff;

export const evidenceIn = (study: CutStudy): Evidence => {
  const graded = study.cells.filter(
    (cell) =>
      cell.grade !== undefined && cell.spoilt === undefined && isOfThisThickness(study, cell),
  );
  const { habit } = study;
  const speeds = [
    ...graded.map((cell) => cell.speedMmPerS),
    ...study.tallies.map((tally) => tally.setting.speedMmPerS),
    ...(habit ? [habit.speedMmPerS] : []),
  ];
  const tallied = (key: 'out' | 'hangs' | 'stays'): number =>
    study.tallies.reduce((sum, tally) => sum + tally[key], 0);
  return {
    out: [
      ...graded.filter((cell) => cell.grade === 'out'),
      ...study.tallies.filter((tally) => tally.out > 0).map((tally) => tally.setting),
      ...(habit && habit.comesOut !== 'often-not' ? [{ ...habit, passes: 1 }] : []),
    ],
    graded: graded.length,
    outCells: graded.filter((cell) => cell.grade === 'out').length + tallied('out'),
    notOutCells:
      graded.filter((cell) => cell.grade !== 'out').length + tallied('hangs') + tallied('stays'),
    slowestMmPerS: speeds.length > 0 ? Math.min(...speeds) : null,
    fastestMmPerS: speeds.length > 0 ? Math.max(...speeds) : null,
    hasTally: study.tallies.some((tally) => tally.out + tally.hangs + tally.stays > 0),
    hasHabit: habit !== undefined,
  };
};

/**
 * The fastest speed at which something came out at this power setting or a lower one, in as many passes or fewer: no
 * recommendation goes beyond it, since more power or another pass at the same speed does not cut less.
 */
export const fastestOutAt = (evidence: Evidence, powerPct: number, passes = 1): number | null => {
  const speeds = evidence.out
    .filter((cell) => cell.powerPct <= powerPct + 1e-9 && cell.passes <= passes)
    .map((cell) => cell.speedMmPerS);
  return speeds.length > 0 ? Math.max(...speeds) : null;
};
