const panel = { width: 300, height: 210, gapX: 46, gapY: 46, left: 58, top: 58 };

export type Mark = 'disc' | 'square' | 'triangle' | 'diamond' | 'cross' | 'none';

/** How a method is drawn: told apart by mark and dashes as well as by colour. */
export interface Look {
  readonly colour: string;
  readonly mark: Mark;
  readonly dash?: string;
  readonly wide?: true;
}

/** One measure: a panel a workshop. */
export interface Row<Point> {
  readonly title: string;
  readonly range: readonly [number, number];
  readonly ticks: readonly number[];
  /** What was promised or is aimed at. */
  readonly line?: number;
  readonly value: (point: Point) => number | null;
}

/** What lies across; logarithmic. */
export interface Across<Point> {
  readonly title: string;
  readonly range: readonly [number, number];
  readonly ticks: readonly number[];
  readonly value: (point: Point) => number;
}

export interface Panels<Point> {
  readonly rows: readonly Row<Point>[];
  readonly across: Across<Point>;
  readonly looks: Readonly<Record<string, Look>>;
  /** The points of one method in one workshop, as they are joined. */
  readonly joined: (own: readonly Point[]) => readonly Point[];
  /** From few runs: drawn hollow. */
  readonly isFew: (point: Point) => boolean;
  readonly notes: readonly string[];
}

type Placed = readonly [x: number, y: number, few: boolean];

/** Panels of workshops beside each other, measures below each other, a line a method. */
export const drawPanels = <Point extends { readonly workshop: string; readonly method: string }>(
  points: readonly Point[],
  { rows, across, looks, joined, isFew, notes }: Panels<Point>,
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
      const isLast = r === rows.length - 1;
      parts.push(drawFrame(row, across, { x0, y0, isFirst: column === 0, isLast }));
      for (const method of methods) {
        const own = joined(points.filter((p) => p.workshop === workshop && p.method === method));
        const at = own.flatMap((point): Placed[] => {
          const value = row.value(point);
          if (value === null) return [];
          const x = x0 + acrossOf(across.range, across.value(point));
          return [[x, y0 + downOf(row.range, value), isFew(point)]];
        });
        parts.push(drawLine(looks[method], at));
      }
    });
  });
  methods.forEach((method, i) => {
    const x = panel.left + (i % 4) * ((width - panel.left) / 4);
    const y = below + 22 * Math.floor(i / 4) + 22;
    parts.push(
      drawLine(looks[method], [
        [x, y, false],
        [x + 34, y, false],
      ]),
    );
    parts.push(text(x + 42, y + 4, method, 'font-size="13"'));
  });
  notes.forEach((note, i) => {
    parts.push(text(panel.left, height - 44 + 16 * i, note, 'font-size="12"'));
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${String(width)} ${String(height)}" width="${String(width)}" height="${String(height)}" font-family="sans-serif" fill="#222">
<rect width="100%" height="100%" fill="#fff"/>
${parts.join('\n')}
</svg>
`;
};

type Range = readonly [number, number];

const acrossOf = ([low, high]: Range, x: number): number =>
  (panel.width * Math.log(Math.min(high, Math.max(low, x)) / low)) / Math.log(high / low);

const downOf = ([low, high]: Range, value: number): number =>
  panel.height * (1 - (Math.min(high, Math.max(low, value)) - low) / (high - low));

interface Frame {
  readonly x0: number;
  readonly y0: number;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

const drawFrame = (
  row: Pick<Row<never>, 'title' | 'range' | 'ticks' | 'line'>,
  across: Pick<Across<never>, 'title' | 'range' | 'ticks'>,
  { x0, y0, isFirst, isLast }: Frame,
): string => {
  const lines = row.ticks.flatMap((tick) => {
    const y = y0 + downOf(row.range, tick);
    const stroke = tick === row.line ? 'stroke="#666" stroke-dasharray="2 3"' : 'stroke="#e4e4e4"';
    return [
      `<path d="M${fixed(x0)} ${fixed(y)}h${String(panel.width)}" ${stroke}/>`,
      text(x0 - 6, y + 4, String(tick), 'font-size="11" text-anchor="end"'),
    ];
  });
  const ticks = across.ticks.flatMap((tick) => {
    const x = x0 + acrossOf(across.range, tick);
    return [
      `<path d="M${fixed(x)} ${fixed(y0 + panel.height)}v4" stroke="#666"/>`,
      text(x, y0 + panel.height + 16, String(tick), 'font-size="11" text-anchor="middle"'),
    ];
  });
  const heading = isFirst ? [text(x0, y0 - 8, row.title, 'font-size="12"')] : [];
  const foot = isLast
    ? [
        text(
          x0 + panel.width / 2,
          y0 + panel.height + 33,
          across.title,
          'font-size="12" text-anchor="middle"',
        ),
      ]
    : [];
  return [
    ...lines,
    ...ticks,
    ...heading,
    ...foot,
    `<path d="M${fixed(x0)} ${fixed(y0)}v${String(panel.height)}h${String(panel.width)}" fill="none" stroke="#666"/>`,
  ].join('');
};

const drawLine = (look: Look | undefined, at: readonly Placed[]): string => {
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
