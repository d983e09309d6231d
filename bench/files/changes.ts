import { layerName, parseLayerName } from '../../src/core/card/settingWords.ts';
import type { Setting } from '../../src/core/machine/setting.ts';
import { joinTouching } from '../../src/core/path/joinTouching.ts';
import type { Point } from '../../src/core/path/point.ts';
import {
  isClosed,
  lengthMm,
  placed,
  segmentsOf,
  type Polyline,
} from '../../src/core/path/polyline.ts';
import type { SeededRandom } from '../../src/num/seededRandom.ts';
import { isCell, runs, type DrawnLine } from './drawnLine.ts';

/** Something that is done to the lines of a card on the way; null where this card has nothing to do it to. */
export interface Change {
  readonly what: string;
  /** Whether the card that comes out is still the card. */
  readonly is: 'harmless' | 'spoilt';
  /** Drawings only: programs have neither names nor colours. */
  readonly only?: 'drawings' | 'programs';
  readonly make: (lines: readonly DrawnLine[], random: SeededRandom) => readonly DrawnLine[] | null;
}

const withPoints = (line: DrawnLine, points: Polyline): DrawnLine => ({ ...line, points });

const oneOf = <T>(random: SeededRandom, items: readonly T[]): T | undefined =>
  items[random.integer(Math.max(1, items.length))];

/** The lines of one cell or one part changed, the others as they are. */
const inOne = (
  lines: readonly DrawnLine[],
  chosen: DrawnLine | undefined,
  change: (line: DrawnLine) => readonly DrawnLine[],
): readonly DrawnLine[] | null =>
  chosen === undefined ? null : lines.flatMap((line) => (line === chosen ? change(line) : [line]));

const called = (line: DrawnLine, setting: Setting): DrawnLine => {
  const label = parseLayerName(line.layer)?.label ?? line.kind;
  return { ...line, setting, layer: layerName(label, setting) };
};

/** Every line of the layer of one cell at another setting; the words stay. */
const layerAt = (
  lines: readonly DrawnLine[],
  random: SeededRandom,
  change: (setting: Setting) => Setting | null,
): readonly DrawnLine[] | null => {
  const chosen = oneOf(random, lines.filter(isCell));
  const setting = chosen === undefined ? null : change(chosen.setting);
  if (chosen === undefined || setting === null) return null;
  return lines.map((line) => (line.layer === chosen.layer ? called(line, setting) : line));
};

const moved = (lines: readonly DrawnLine[], by: Point): readonly DrawnLine[] =>
  lines.map((line) => withPoints(line, placed(line.points, by)));

const first = (
  lines: readonly DrawnLine[],
  kind: DrawnLine['kind'],
): readonly DrawnLine[] | null => {
  const these = lines.filter((line) => line.kind === kind);
  return these.length === 0 ? null : [...these, ...lines.filter((line) => line.kind !== kind)];
};

const strokesOfWords = (lines: readonly DrawnLine[], cell: string): readonly DrawnLine[] =>
  lines.filter(({ of }) => of.what === 'words' && of.cell === cell);

const cellOf = ({ of }: DrawnLine): string => ('cell' in of ? of.cell : '');

const turnedStart = (points: Polyline, by: number): Polyline => {
  const open = points.slice(0, -1);
  const at = open[by % Math.max(1, open.length)];
  return at === undefined ? points : [...open.slice(by), ...open.slice(0, by), at];
};

export const changes: readonly Change[] = [
  { what: 'saved as it is', is: 'harmless', make: (lines) => lines },
  {
    what: 'polylines exploded to single strokes',
    is: 'harmless',
    make: (lines) =>
      lines.flatMap((line) => segmentsOf(line.points).map((segment) => withPoints(line, segment))),
  },
  {
    what: 'strokes joined by an optimiser',
    is: 'harmless',
    // Neighbours only: a program cuts a mixed card in an order that is meant, and one sorted by layers is another card.
    make: (lines) =>
      runs(lines).flatMap((its) =>
        joinTouching(its.map(({ points }) => points)).flatMap(({ points, of }) => {
          const [line] = of.flatMap((i) => its[i] ?? []);
          return line === undefined ? [] : [withPoints(line, points)];
        }),
      ),
  },
  {
    what: 'every line drawn from its other end',
    is: 'harmless',
    make: (lines) => lines.map((line) => withPoints(line, line.points.toReversed())),
  },
  {
    what: 'closed lines begun at another corner',
    is: 'harmless',
    make: (lines, random) =>
      lines.map((line) =>
        isClosed(line.points)
          ? withPoints(line, turnedStart(line.points, random.integer(line.points.length - 1)))
          : line,
      ),
  },
  {
    what: 'lines cut in two in the middle of a segment',
    is: 'harmless',
    make: (lines) =>
      lines.flatMap((line) => {
        const [a, b, ...rest] = line.points;
        if (a === undefined || b === undefined || lengthMm(line.points) < 2) return [line];
        const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        return [withPoints(line, [a, middle]), withPoints(line, [middle, b, ...rest])];
      }),
  },
  {
    what: 'points added along every segment',
    is: 'harmless',
    make: (lines) =>
      lines.map((line) => {
        const [start] = line.points;
        return start === undefined
          ? line
          : withPoints(line, [
              start,
              ...segmentsOf(line.points).flatMap(([a, b]): readonly Point[] => [
                [(2 * a[0] + b[0]) / 3, (2 * a[1] + b[1]) / 3],
                b,
              ]),
            ]);
      }),
  },
  {
    what: 'rounded to hundredths of a mm',
    is: 'harmless',
    make: (lines) =>
      lines.map((line) =>
        withPoints(
          line,
          line.points.map(([x, y]): Point => [
            Math.round(x * 100) / 100,
            Math.round(y * 100) / 100,
          ]),
        ),
      ),
  },
  { what: 'moved as a whole', is: 'harmless', make: (lines) => moved(lines, [37.5, 12.25]) },
  {
    what: 'marks in another order among themselves',
    is: 'harmless',
    make: (lines, random) => [
      ...random.shuffle(lines.filter(({ kind }) => kind === 'marks')),
      ...lines.filter(({ kind }) => kind !== 'marks'),
    ],
  },
  {
    what: 'another speed in a layer',
    is: 'spoilt',
    make: (lines, random) =>
      layerAt(lines, random, (setting) => ({ ...setting, speedMmPerS: setting.speedMmPerS + 1 })),
  },
  {
    what: 'another power in a layer',
    is: 'spoilt',
    make: (lines, random) =>
      layerAt(lines, random, (setting) => ({
        ...setting,
        powerPct: setting.powerPct + 2,
      })),
  },
  {
    what: 'another power in corners',
    is: 'spoilt',
    only: 'drawings',
    make: (lines, random) =>
      layerAt(lines, random, (setting) => ({
        ...setting,
        minPowerPct: Math.max(1, (setting.minPowerPct ?? setting.powerPct) - 3),
      })),
  },
  {
    what: 'another pressure in a layer',
    is: 'spoilt',
    only: 'drawings',
    make: (lines, random) =>
      layerAt(lines, random, (setting) =>
        typeof setting.air === 'object' ? { ...setting, air: { kPa: setting.air.kPa + 20 } } : null,
      ),
  },
  {
    what: 'air turned the other way in a layer',
    is: 'spoilt',
    make: (lines, random) =>
      layerAt(lines, random, (setting) =>
        setting.air === undefined
          ? null
          : { ...setting, air: setting.air === 'off' ? 'pump' : 'off' },
      ),
  },
  {
    what: 'a second pass in a layer',
    is: 'spoilt',
    make: (lines, random) =>
      layerAt(lines, random, (setting) => ({ ...setting, passes: setting.passes + 1 })),
  },
  {
    what: 'the settings of two rungs exchanged',
    is: 'spoilt',
    make: (lines, random) => {
      const cells = random.shuffle(lines.filter(isCell));
      const [a] = cells;
      const b = cells.find((line) => line.layer !== a?.layer);
      if (a === undefined || b === undefined) return null;
      return lines.map((line) => {
        if (line.layer === a.layer) return called(line, b.setting);
        return line.layer === b.layer ? called(line, a.setting) : line;
      });
    },
  },
  {
    what: 'a cell left out',
    is: 'spoilt',
    make: (lines, random) => inOne(lines, oneOf(random, lines.filter(isCell)), () => []),
  },
  {
    what: 'a cell cut twice',
    is: 'spoilt',
    make: (lines, random) =>
      inOne(lines, oneOf(random, lines.filter(isCell)), (line) => [line, line]),
  },
  {
    what: 'a third of a cell left out',
    is: 'spoilt',
    make: (lines, random) =>
      inOne(lines, oneOf(random, lines.filter(isCell)), (line) => [
        withPoints(line, line.points.slice(0, Math.ceil((2 * line.points.length) / 3))),
      ]),
  },
  {
    what: 'a cell drawn a tenth smaller',
    is: 'spoilt',
    make: (lines, random) =>
      inOne(lines, oneOf(random, lines.filter(isCell)), (line) => {
        const [cx, cy] = line.points[0] ?? [0, 0];
        const smaller = line.points.map(([x, y]): Point => [
          cx + 0.9 * (x - cx),
          cy + 0.9 * (y - cy),
        ]);
        return [withPoints(line, smaller)];
      }),
  },
  {
    what: 'a cell moved by 2 mm',
    is: 'spoilt',
    make: (lines, random) =>
      inOne(lines, oneOf(random, lines.filter(isCell)), (line) => [
        withPoints(line, placed(line.points, [2, 0])),
      ]),
  },
  {
    what: 'the words of two cells exchanged',
    is: 'spoilt',
    make: (lines, random) => {
      const [a, b] = random.shuffle(lines.filter(isCell));
      const [one, other] = [a, b].map((cell) => cell?.points);
      const [from, to] = [one?.[0], other?.[0]];
      if (a === undefined || b === undefined || from === undefined || to === undefined) return null;
      const by: Point = [to[0] - from[0], to[1] - from[1]];
      const [wordsA, wordsB] = [a, b].map((cell) => new Set(strokesOfWords(lines, cellOf(cell))));
      return lines.map((line) => {
        if (wordsA?.has(line) === true) return withPoints(line, placed(line.points, by));
        return wordsB?.has(line) === true
          ? withPoints(line, placed(line.points, [-by[0], -by[1]]))
          : line;
      });
    },
  },
  {
    what: 'a stroke of a cell’s words left out',
    is: 'spoilt',
    make: (lines, random) => {
      const cell = oneOf(random, lines.filter(isCell));
      const strokes = cell === undefined ? [] : strokesOfWords(lines, cellOf(cell));
      return inOne(lines, oneOf(random, strokes), () => []);
    },
  },
  { what: 'the outline cut first', is: 'spoilt', make: (lines) => first(lines, 'outline') },
  {
    what: 'the window cut before the shapes',
    is: 'spoilt',
    make: (lines) => {
      const windows = lines.filter(({ kind }) => kind === 'window');
      if (windows.length === 0) return null;
      return [
        ...lines.filter(({ kind }) => kind === 'marks'),
        ...windows,
        ...lines.filter(({ kind }) => kind !== 'marks' && kind !== 'window'),
      ];
    },
  },
  {
    what: 'the marks drawn last',
    is: 'spoilt',
    make: (lines) => [
      ...lines.filter(({ kind }) => kind !== 'marks'),
      ...lines.filter(({ kind }) => kind === 'marks'),
    ],
  },
  {
    what: 'the cells cut backwards',
    is: 'spoilt',
    make: (lines) => {
      const cells = lines.filter(isCell);
      if (cells.length < 2) return null;
      let next = cells.length;
      return lines.map((line) => {
        if (!isCell(line)) return line;
        next -= 1;
        return cells[next] ?? line;
      });
    },
  },
  {
    what: 'the cells of a mixed program sorted by their layers',
    is: 'spoilt',
    only: 'programs',
    make: (lines) => {
      const cells = lines.filter(isCell);
      const layers = [...new Set(cells.map(({ layer }) => layer))];
      const sorted = layers.flatMap((layer) => cells.filter((cell) => cell.layer === layer));
      const next = sorted.values();
      return sorted.every((cell, i) => cell === cells[i])
        ? null
        : lines.map((line) => (isCell(line) ? (next.next().value ?? line) : line));
    },
  },
  {
    what: 'read in inches',
    is: 'spoilt',
    make: (lines) => lines.map((line) => withPoints(line, placed(line.points, [0, 0], 25.4))),
  },
  {
    what: 'mirrored',
    is: 'spoilt',
    make: (lines) => {
      const right = Math.max(...lines.flatMap(({ points }) => points.map(([x]) => x)));
      return lines.map((line) =>
        withPoints(
          line,
          line.points.map(([x, y]): Point => [right - x, y]),
        ),
      );
    },
  },
  {
    what: 'a line added across a cell',
    is: 'spoilt',
    make: (lines, random) =>
      inOne(lines, oneOf(random, lines.filter(isCell)), (line) => {
        const [x, y] = line.points[0] ?? [0, 0];
        const added: Polyline = [
          [x - 3, y - 1],
          [x + 3, y - 4],
        ];
        return [line, withPoints(line, added)];
      }),
  },
  {
    what: 'marks at the setting of a cell',
    is: 'spoilt',
    make: (lines, random) => {
      const cell = oneOf(random, lines.filter(isCell));
      if (cell === undefined) return null;
      return lines.map((line) => (line.kind === 'marks' ? called(line, cell.setting) : line));
    },
  },
  {
    what: 'names lost, colours kept',
    is: 'harmless',
    only: 'drawings',
    make: (lines) => lines.map((line, i) => ({ ...line, layer: `layer ${String(i)}` })),
  },
  {
    what: 'names lost, and two rungs’ colours exchanged',
    is: 'spoilt',
    only: 'drawings',
    make: (lines, random) => {
      const cells = random.shuffle(lines.filter(isCell));
      const [a] = cells;
      const b = cells.find(({ colour }) => colour !== a?.colour);
      if (a === undefined || b === undefined) return null;
      return lines.map((line) => {
        const colour =
          line.colour === a.colour ? b.colour : line.colour === b.colour ? a.colour : line.colour;
        return { ...line, colour, layer: '' };
      });
    },
  },
  {
    what: 'names and colours lost',
    is: 'spoilt',
    only: 'drawings',
    make: (lines) => lines.map((line) => ({ ...line, layer: '', colour: '#000000' })),
  },
  {
    what: 'one cell at M4 among M3',
    is: 'spoilt',
    only: 'programs',
    make: (lines, random) =>
      inOne(lines, oneOf(random, lines.filter(isCell)), (line) => [{ ...line, beam: 'M04' }]),
  },
  {
    what: 'one cell with other power than its fellows',
    is: 'spoilt',
    only: 'programs',
    make: (lines, random) =>
      inOne(lines, oneOf(random, lines.filter(isCell)), (line) => [
        { ...line, setting: { ...line.setting, powerPct: line.setting.powerPct * 1.2 } },
      ]),
  },
];
