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

const panel = { width: 300, height: 210, gapX: 46, gapY: 46, left: 58, top: 58 };

/** Colours after Okabe & Ito (2008), told apart by mark and dashes as well. */
const looks: Readonly<Record<string, { colour: string; mark: Mark; dash?: string; wide?: true }>> =
  {
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
type Placed = readonly [x: number, y: number, few: boolean];
type Mark = 'disc' | 'square' | 'triangle' | 'diamond' | 'cross' | 'none';

interface Row {
  readonly title: string;
  readonly range: readonly [number, number];
  readonly ticks: readonly number[];
  readonly line?: number;
  readonly value: (point: CurvePoint) => number | null;
}
const rows: readonly Row[] = [
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

const xTicks = [5, 10, 20, 40, 60] as const;
const xRange = [4.5, 66] as const;

/** Panels of workshops beside each other, measures below each other; x is logarithmic. */
export const drawCurves = (
  points: readonly CurvePoint[],
  over: 'cells' | 'settingsTyped',
): string => {
  const workshops = [...new Set(points.map((point) => point.workshop))];
  const methods = Object.keys(looks).filter((name) => points.some((p) => p.method === name));
  const width = panel.left + workshops.length * (panel.width + panel.gapX);
  const below = panel.top + rows.length * (panel.height + panel.gapY) + 12;
  const legendRows = Math.ceil(methods.length / 4);
  const height = below + 22 * legendRows + 84;
  const parts: string[] = [];
  workshops.forEach((workshop, column) => {
    const x0 = panel.left + column * (panel.width + panel.gapX);
    parts.push(text(x0, panel.top - 28, workshop, 'font-weight="700" font-size="15"'));
    rows.forEach((row, r) => {
      const y0 = panel.top + r * (panel.height + panel.gapY);
      parts.push(drawFrame(row, x0, y0, column === 0, r === rows.length - 1 ? over : null));
      for (const method of methods) {
        const own = distinct(
          points.filter((p) => p.workshop === workshop && p.method === method),
          over,
        );
        const at = own.flatMap((point): Placed[] => {
          const value = row.value(point);
          return value === null
            ? []
            : [[x0 + acrossOf(point[over]), y0 + downOf(row, value), point.runs < manyRuns]];
        });
        parts.push(drawLine(method, at));
      }
    });
  });
  methods.forEach((method, i) => {
    const x = panel.left + (i % 4) * ((width - panel.left) / 4);
    const y = below + 22 * Math.floor(i / 4) + 22;
    parts.push(
      drawLine(method, [
        [x, y, false],
        [x + 34, y, false],
      ]),
    );
    parts.push(text(x + 42, y + 4, method, 'font-size="13"'));
  });
  const runs = points.map((point) => point.runs);
  const notes = [
    `${String(Math.min(...runs))} to ${String(Math.max(...runs))} campaigns a point (hollow: fewer than ${String(manyRuns)}),`,
    'the same seeds for every method. One-by-one methods cut each cell on a sheet of its own.',
    'oracle: told all that scatters, learns v50 alone, places each cell where its grade tells most.',
  ];
  notes.forEach((note, i) => {
    parts.push(text(panel.left, height - 44 + 16 * i, note, 'font-size="12"'));
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${String(width)} ${String(height)}" width="${String(width)}" height="${String(height)}" font-family="sans-serif" fill="#222">
<rect width="100%" height="100%" fill="#fff"/>
${parts.join('\n')}
</svg>
`;
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

const acrossOf = (x: number): number =>
  (panel.width * Math.log(Math.max(xRange[0], x) / xRange[0])) / Math.log(xRange[1] / xRange[0]);

const downOf = ({ range: [low, high] }: Row, value: number): number =>
  panel.height * (1 - (Math.min(high, Math.max(low, value)) - low) / (high - low));

const drawFrame = (
  row: Row,
  x0: number,
  y0: number,
  isFirst: boolean,
  over: 'cells' | 'settingsTyped' | null,
): string => {
  const lines = row.ticks.flatMap((tick) => {
    const y = y0 + downOf(row, tick);
    const stroke = tick === row.line ? 'stroke="#666" stroke-dasharray="2 3"' : 'stroke="#e4e4e4"';
    return [
      `<path d="M${fixed(x0)} ${fixed(y)}h${String(panel.width)}" ${stroke}/>`,
      text(x0 - 6, y + 4, String(tick), 'font-size="11" text-anchor="end"'),
    ];
  });
  const ticks = xTicks.flatMap((tick) => {
    const x = x0 + acrossOf(tick);
    return [
      `<path d="M${fixed(x)} ${fixed(y0 + panel.height)}v4" stroke="#666"/>`,
      text(x, y0 + panel.height + 16, String(tick), 'font-size="11" text-anchor="middle"'),
    ];
  });
  const heading = isFirst ? [text(x0, y0 - 8, row.title, 'font-size="12"')] : [];
  const foot =
    over === null
      ? []
      : [
          text(
            x0 + panel.width / 2,
            y0 + panel.height + 33,
            over === 'cells' ? 'cells cut' : 'settings typed (median)',
            'font-size="12" text-anchor="middle"',
          ),
        ];
  return [
    ...lines,
    ...ticks,
    ...heading,
    ...foot,
    `<path d="M${fixed(x0)} ${fixed(y0)}v${String(panel.height)}h${String(panel.width)}" fill="none" stroke="#666"/>`,
  ].join('');
};

const drawLine = (method: string, at: readonly Placed[]): string => {
  const look = looks[method];
  if (look === undefined || at.length === 0) return '';
  const { colour, mark, dash, wide } = look;
  const path = `<path d="M${at.map(([x, y]) => `${fixed(x)} ${fixed(y)}`).join('L')}" fill="none" stroke="${colour}" stroke-width="${wide ? '2.6' : '1.4'}"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`;
  return path + at.map(([x, y, few]) => drawMark(mark, x, y, colour, few)).join('');
};

const drawMark = (mark: Mark, x: number, y: number, colour: string, few: boolean): string => {
  const shapes: Readonly<Record<Mark, string>> = {
    disc: 'm-4 0a4 4 0 1 0 8 0a4 4 0 1 0 -8 0z',
    square: 'm-3 -3h6v6h-6z',
    triangle: 'm0 -4l4 7h-8z',
    diamond: 'm0 -4l4 4l-4 4l-4 -4z',
    cross: 'm-3 -3l6 6m0 -6l-6 6',
    none: '',
  };
  if (mark === 'none') return '';
  return `<path d="M${fixed(x)} ${fixed(y)}${shapes[mark]}" fill="${mark === 'cross' ? 'none' : few ? '#fff' : colour}" stroke="${colour}"/>`;
};

const fixed = (value: number): string => value.toFixed(1);

const text = (x: number, y: number, words: string, style: string): string =>
  `<text x="${fixed(x)}" y="${fixed(y)}" ${style}>${words}</text>`;
