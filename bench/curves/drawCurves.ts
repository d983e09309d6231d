import { drawPanels, type Look, type Row } from './drawPanels.ts';

/** One method at one number of cells in one workshop. */
export interface CurvePoint {
  readonly workshop: string;
  readonly cellsAtMost: number;
  readonly runs: number;
  readonly method: string;
  readonly cells: number;
  readonly cards: number;
  readonly settingsTyped: number;
  readonly speedRatio: number | null;
  readonly speedRatioP10: number | null;
  readonly keptPct: number | null;
  readonly noAnswerPct: number;
}

/** Colours after Okabe & Ito (2008), told apart by mark and dashes as well. */
const looks: Readonly<Record<string, Look>> = {
  throughcut: { colour: '#0072B2', mark: 'disc', wide: true },
  oracle: { colour: '#000000', mark: 'none', dash: '7 4', wide: true },
  'grid-eye': { colour: '#999999', mark: 'square' },
  'grid-ml': { colour: '#999999', mark: 'cross', dash: '3 3' },
  'grid-firth': { colour: '#999999', mark: 'triangle', dash: '8 3' },
  halving: { colour: '#000000', mark: 'cross' },
  bruceton: { colour: '#D55E00', mark: 'square' },
  langlie: { colour: '#D55E00', mark: 'triangle', dash: '5 3' },
  neyer: { colour: '#009E73', mark: 'square' },
  'three-phase': { colour: '#009E73', mark: 'triangle', dash: '5 3' },
  entropy: { colour: '#CC79A7', mark: 'diamond' },
  'gauss-process': { colour: '#E69F00', mark: 'diamond', dash: '5 3' },
};
/** A point of so many campaigns is drawn full, of fewer hollow. */
const manyRuns = 50;
const rows: readonly Row<CurvePoint>[] = [
  {
    title: 'speed, as a share of the fastest that holds (median)',
    range: [0, 1.4],
    ticks: [0, 0.2, 0.4, 0.6, 0.8, 1, 1.2, 1.4],
    line: 1,
    value: (point) => point.speedRatio,
  },
  {
    title: 'promise kept, of 100 answers (95 was promised)',
    range: [0, 100],
    ticks: [0, 20, 40, 60, 80, 95],
    line: 95,
    value: (point) => point.keptPct,
  },
  {
    title: 'no answer, of 100 campaigns',
    range: [0, 100],
    ticks: [0, 20, 40, 60, 80, 100],
    value: (point) => point.noAnswerPct,
  },
];

/** Panels of workshops beside each other, measures below each other. */
export const drawCurves = (
  points: readonly CurvePoint[],
  over: 'cells' | 'settingsTyped',
): string => {
  const runs = points.map((point) => point.runs);
  return drawPanels(points, {
    rows,
    across: {
      title: over === 'cells' ? 'cells cut' : 'settings typed (median)',
      range: [4.5, 66],
      ticks: [5, 10, 20, 40, 60],
      value: (point) => point[over],
    },
    looks,
    joined: (own) => distinct(own, over),
    isFew: (point) => point.runs < manyRuns,
    notes: [
      `${String(Math.min(...runs))} to ${String(Math.max(...runs))} campaigns a point (hollow: fewer than ${String(manyRuns)}),`,
      'the same seeds for every method. One-by-one methods cut each cell on a sheet of its own.',
      'oracle: told all that scatters, learns v50 alone, places each cell where its grade tells most.',
    ],
  });
};

/** Of points that lie at one place (a grid has only so many sizes) the one with most campaigns. */
const distinct = (
  points: readonly CurvePoint[],
  over: 'cells' | 'settingsTyped',
): readonly CurvePoint[] => {
  const byRuns = points.toSorted((a, b) => b.runs - a.runs);
  return byRuns
    .filter((point, i) => byRuns.findIndex((other) => other.cells === point.cells) === i)
    .toSorted((a, b) => a[over] - b[over]);
};
