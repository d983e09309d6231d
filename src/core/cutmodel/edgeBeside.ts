import { airKey } from '../machine/air.ts';
import { cornerPowerPct } from '../machine/setting.ts';
import { edgeKindOfGrade, edgesOf, type EdgeGrade } from '../reading/edge.ts';
import type { Ask, StudyCell } from './cutStudy.ts';
import type { Fit } from './fit.ts';
import type { FitAnswer, LinePoint, Recommendation } from './fitAnswer.ts';
import { leastEdges, preferEdge } from './preferEdge.ts';

type EdgeCell = StudyCell & { readonly edge: EdgeGrade };

/** Figures that differ by less are the same setting. */
const alike = 1e-9;

/**
 * How the edge comes out at the recommended setting, and which setting is to be preferred for it. To choose from are those at
 * which an edge was graded and the fastest at their powers, where they keep the promise; at the asked power alone where one
 * was asked for. Absent where no edge was graded that was cut as the answer is.
 */
export const edgeBeside = (
  { study, decision }: Fit,
  choice: Recommendation,
  { line, ask }: { readonly line: readonly LinePoint[]; readonly ask: Ask },
): Pick<FitAnswer, 'edge'> => {
  const cells = mostAlike(study.cells.filter((cell) => bearsOn(cell, choice)));
  const [first] = cells;
  if (first === undefined) return {};
  const kind = edgeKindOfGrade(first.edge);
  const cuts = cells.map(({ powerPct, speedMmPerS, edge, count = 1 }) => ({
    ...{ powerPct, speedMmPerS, edge, count },
  }));
  const edges = cuts.reduce((sum, { count }) => sum + count, 0);
  const said = { best: edgesOf[kind][0], taped: first.taped === true, edges, wanted: leastEdges };
  if (edges < leastEdges) return { edge: { ...said, here: null } };
  const { promise } = study;
  const mayRun = candidates(cells, line)
    .filter(({ powerPct }) => ask.powerPct === undefined || powerPct === choice.powerPct)
    .filter(() => ask.speedMmPerS === undefined)
    .filter(
      ({ powerPct, speedMmPerS }) =>
        100 * decision.sureAt(powerPct, speedMmPerS) >= promise.surePct - roundingPct,
    );
  const { here, preferred } = preferEdge({ cuts, kind, answer: choice, mayRun });
  if (preferred === undefined) return { edge: { ...said, here } };
  const { powerPct, speedMmPerS } = preferred.spot;
  return {
    edge: {
      ...said,
      here,
      preferred: {
        powerPct,
        speedMmPerS,
        passes: choice.passes,
        ...preferred.share,
        secondsMore: promise.partLengthMm * (1 / speedMmPerS - 1 / choice.speedMmPerS),
        outOf100Mean: 100 * decision.shareAt(powerPct, speedMmPerS),
        sureOfPromisePct: 100 * decision.sureAt(powerPct, speedMmPerS),
      },
    },
  };
};

/** The fastest that holds is found by a quantile that is right to this. */
const roundingPct = 0.1;

const bearsOn = (cell: StudyCell, choice: Recommendation): cell is EdgeCell =>
  cell.edge !== undefined &&
  cell.grade === 'out' &&
  cell.spoilt === undefined &&
  cell.passes === choice.passes &&
  airKey(cell.air) === airKey(choice.air) &&
  cornerPowerPct(cell) === cell.powerPct;

/** Edges of one kind of material, all through tape or none: those of which there are most. */
const mostAlike = (cells: readonly EdgeCell[]): readonly EdgeCell[] => {
  const groups = new Map<string, EdgeCell[]>();
  for (const cell of cells) {
    const key = `${edgeKindOfGrade(cell.edge)}/${String(cell.taped === true)}`;
    groups.set(key, [...(groups.get(key) ?? []), cell]);
  }
  return [...groups.values()].reduce(
    (most, group) => (group.length > most.length ? group : most),
    [],
  );
};

const candidates = (
  cells: readonly EdgeCell[],
  line: readonly LinePoint[],
): readonly { readonly powerPct: number; readonly speedMmPerS: number }[] =>
  line.flatMap(({ powerPct, speedMmPerS: fastest }) => {
    const graded = cells.filter((cell) => Math.abs(cell.powerPct - powerPct) <= alike);
    const slower = graded
      .map(({ speedMmPerS }) => speedMmPerS)
      .filter((speed) => speed < fastest - alike);
    return graded.length === 0
      ? []
      : [...new Set([fastest, ...slower])].map((speedMmPerS) => ({ powerPct, speedMmPerS }));
  });
