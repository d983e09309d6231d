import { isClosed, segmentsOf, type Polyline } from '../../src/core/path/polyline.ts';
import { runs, type DrawnLine } from './drawnLine.ts';

/** A way in which some program or other writes lines: none of it is ours, and none is read by ours when written. */
export type OtherTool = (lines: readonly DrawnLine[], page: Page) => string;

export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  /** DXF's index for a colour. */
  readonly indexOf: (colour: string) => number;
}

const figure = (value: number, decimals = 3): string => String(Number(value.toFixed(decimals)));

const svgPath = (points: Polyline, at: (x: number, y: number) => string): string =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${at(x, y)}`).join('');

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

/** Groups with a label of their own, in px of 96 to the inch, one path a layer, colours by class. */
const svgInPx: OtherTool = (lines, { widthMm, heightMm }) => {
  const px = (mm: number): string => figure((mm * 96) / 25.4, 4);
  const groups = runs(lines);
  const colours = [...new Set(lines.map(({ colour }) => colour))];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" width="${px(widthMm)}px" height="${px(heightMm)}px">`,
    `<style>path{fill:none}${colours.map((colour, i) => `.c${String(i)}{stroke:${colour}}`).join('')}</style>`,
    ...groups.map(
      (group) =>
        `<g inkscape:label="${escaped(group[0]?.layer ?? '')}" inkscape:groupmode="layer"><path class="c${String(colours.indexOf(group[0]?.colour ?? ''))}" d="${group
          .map(({ points }) => svgPath(points, (x, y) => `${px(x)},${px(heightMm - y)}`))
          .join(' ')}"/></g>`,
    ),
    '</svg>',
  ].join('\n');
};

/** One polyline a line, in inches, turned upside down by a transform; ids as names. */
const svgInInches: OtherTool = (lines, { widthMm, heightMm }) => {
  const inches = (mm: number): string => figure(mm / 25.4, 6);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${inches(widthMm)}in" height="${inches(heightMm)}in" viewBox="0 0 ${inches(widthMm)} ${inches(heightMm)}">`,
    `<g transform="matrix(1 0 0 -1 0 ${inches(heightMm)})">`,
    ...runs(lines).map(
      (group) =>
        `<g id="${escaped(group[0]?.layer ?? '').replaceAll(' ', '_')}" style="fill:none;stroke:${group[0]?.colour ?? ''};stroke-width:0.004">${group
          .map(
            ({ points }) =>
              `<polyline points="${points.map(([x, y]) => `${inches(x)},${inches(y)}`).join(' ')}"/>`,
          )
          .join('')}</g>`,
    ),
    '</g></svg>',
  ].join('\n');
};

const group = (code: number, value: string | number): string => `${String(code)}\n${String(value)}`;

const dxfFile = (header: readonly string[], entities: readonly string[]): string =>
  [
    group(0, 'SECTION'),
    group(2, 'HEADER'),
    ...header,
    group(0, 'ENDSEC'),
    group(0, 'SECTION'),
    group(2, 'ENTITIES'),
    ...entities,
    group(0, 'ENDSEC'),
    group(0, 'EOF'),
    '',
  ].join('\n');

/** The old kind: every segment a LINE of its own in inches, capitals, no spaces and no points in names. */
const dxfOfLines: OtherTool = (lines, { indexOf }) => {
  const inches = (mm: number): string => figure(mm / 25.4, 7);
  return dxfFile(
    [group(9, '$ACADVER'), group(1, 'AC1009'), group(9, '$INSUNITS'), group(70, 1)],
    lines.flatMap(({ points, layer, colour }) =>
      segmentsOf(points).flatMap(([[x1, y1], [x2, y2]]) => [
        group(0, 'LINE'),
        group(8, layer.toUpperCase().replaceAll(/[ .]/g, '_')),
        group(62, indexOf(colour)),
        group(10, inches(x1)),
        group(20, inches(y1)),
        group(11, inches(x2)),
        group(21, inches(y2)),
      ]),
    ),
  );
};

/** Heavy polylines with vertices in mm. */
const dxfOfPolylines: OtherTool = (lines, { indexOf }) =>
  dxfFile(
    [group(9, '$ACADVER'), group(1, 'AC1015'), group(9, '$INSUNITS'), group(70, 4)],
    lines.flatMap(({ points, layer, colour }) => {
      const loops = isClosed(points);
      return [
        group(0, 'POLYLINE'),
        group(8, layer),
        group(62, indexOf(colour)),
        group(66, 1),
        group(70, loops ? 1 : 0),
        ...(loops ? points.slice(0, -1) : points).flatMap(([x, y]) => [
          group(0, 'VERTEX'),
          group(8, layer),
          group(10, figure(x, 5)),
          group(20, figure(y, 5)),
        ]),
        group(0, 'SEQEND'),
      ];
    }),
  );

/** Numbered lines without any comment, in inches, S to 255. */
const gcodeBare: OtherTool = (lines) => {
  const inches = (mm: number): string => figure(mm / 25.4, 5);
  const blocks = [
    'G90',
    'G20',
    'M5',
    ...lines.flatMap((line) => {
      const { points, setting } = line;
      const [first, ...rest] = points;
      if (first === undefined) return [];
      const back = isClosed(points) ? rest : [...points.toReversed().slice(1)];
      const ways = Array.from({ length: setting.passes }, (_, pass) =>
        pass % 2 === 0 ? rest : back,
      ).flat();
      return [
        ...airWord(setting.air),
        `G00 X${inches(first[0])} Y${inches(first[1])}`,
        line.beam ?? 'M03',
        ...ways.map(
          ([x, y]) =>
            `G01 X${inches(x)} Y${inches(y)} F${figure((setting.speedMmPerS * 60) / 25.4, 5)} S${figure((setting.powerPct / 100) * 255, 3)}`,
        ),
        'M05',
      ];
    }),
    'M09',
    'G21',
    'M30',
  ];
  return `%\n${blocks.map((block, i) => `N${String(10 * (i + 1))} ${block}`).join('\n')}\n%\n`;
};

const airWord = (air: DrawnLine['setting']['air']): readonly string[] =>
  air === undefined ? [] : [air === 'off' ? 'M09' : 'M08'];

export const otherTools = {
  'svg in px': svgInPx,
  'svg in inches': svgInInches,
  'dxf of lines': dxfOfLines,
  'dxf of polylines': dxfOfPolylines,
  'gcode without comments': gcodeBare,
} as const satisfies Readonly<Record<string, OtherTool>>;

export type OtherToolName = keyof typeof otherTools;
