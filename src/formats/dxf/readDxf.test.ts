import { param } from '../../../test/samples/param.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

import { parseDxf } from '../../../test/fixtures/parseDxf.ts';
import type { Toolpath } from '../../core/filecheck/toolpath.ts';
import { lengthMm } from '../../core/path/polyline.ts';
import { readDxf } from './readDxf.ts';

type Row = readonly (string | number)[];
interface Whole {
  readonly units?: number;
  readonly layers?: readonly Row[];
  readonly blocks?: readonly Row[];
}

/** A whole DXF around some entities, each a row of group codes and values. */
const dxf = (
  entities: readonly Row[],
  { units = 4, layers = [], blocks = [] }: Whole = {},
): string =>
  [
    [0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, units, 0, 'ENDSEC'],
    [0, 'SECTION', 2, 'TABLES', 0, 'TABLE', 2, 'LAYER'],
    ...layers,
    [0, 'ENDTAB', 0, 'ENDSEC', 0, 'SECTION', 2, 'BLOCKS'],
    ...blocks,
    [0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES'],
    ...entities,
    [0, 'ENDSEC', 0, 'EOF'],
  ]
    .flat()
    .join('\n');
const read = (text: string): Toolpath => {
  const outcome = readDxf(text);
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};
const lengths = (text: string): readonly number[] =>
  read(text).lines.map(({ points }) => lengthMm(points));

const line = [0, 'LINE', 8, 'A 14.0mmps 30pct min30', 10, 0, 20, 0, 11, 3, 21, 4];

describe('reading DXF', () => {
  it('takes inches where no unit is named and the drawing was begun in inches ($MEASUREMENT, DXF reference)', () => {
    const begun = (measurement: number, units = 0): string =>
      dxf([line], { units }).replace(
        '9\n$INSUNITS',
        `9\n$MEASUREMENT\n70\n${String(measurement)}\n9\n$INSUNITS`,
      );
    expect(lengths(begun(0))[0]).toBeCloseTo(127, 9);
    expect(lengths(begun(1))[0]).toBeCloseTo(5, 9);
    expect(lengths(begun(0, 4))[0]).toBeCloseTo(5, 9);
    expect(read(begun(0)).noticed.map(({ code }) => code)).toEqual(['check-units-assumed']);
    expect(lengths(dxf([line], { units: 9 }))[0]).toBeCloseTo(0.127, 9);
  });

  it('reads lines, circles, arcs and ellipses (a circle of 10 mm is 31.416 mm round; Euclid)', () => {
    const circle = [0, 'CIRCLE', 8, '0', 10, 5, 20, 5, 40, 5];
    const quarter = [0, 'ARC', 8, '0', 10, 0, 20, 0, 40, 10, 50, 0, 51, 90];
    const ellipse = [
      0,
      'ELLIPSE',
      8,
      '0',
      10,
      0,
      20,
      0,
      11,
      5,
      21,
      0,
      40,
      1,
      41,
      0,
      42,
      2 * Math.PI,
    ];
    const [a = 0, b = 0, c = 0, d = 0] = lengths(dxf([line, circle, quarter, ellipse]));
    expect(a).toBe(5);
    expect(b).toBeCloseTo(10 * Math.PI, 1);
    expect(c).toBeCloseTo(5 * Math.PI, 1);
    expect(d).toBeCloseTo(10 * Math.PI, 1);
  });

  it('reads polylines with bulges: a bulge of 1 is half a circle, of tan(π/8) a quarter (DXF reference)', () => {
    const half = [0, 'LWPOLYLINE', 8, '0', 90, 2, 70, 0, 10, 0, 20, 0, 42, 1, 10, 10, 20, 0];
    const quarter = [
      0,
      'LWPOLYLINE',
      8,
      '0',
      90,
      2,
      70,
      1,
      10,
      0,
      20,
      0,
      42,
      Math.tan(Math.PI / 8),
      10,
      10,
      20,
      0,
    ];
    const toolpath = read(dxf([half, quarter]));
    expect(lengthMm(toolpath.lines[0]?.points ?? [])).toBeCloseTo(5 * Math.PI, 1);
    // Positive bulges turn anticlockwise: from the left to the right the bow hangs below.
    expect(Math.min(...(toolpath.lines[0]?.points.map(([, y]) => y) ?? []))).toBeCloseTo(-5, 1);
    const radius = 10 / Math.SQRT2;
    expect(lengthMm(toolpath.lines[1]?.points ?? [])).toBeCloseTo((radius * Math.PI) / 2 + 10, 1);
  });

  it('takes the layer’s name and setting, and the unit', () => {
    const [first] = read(dxf([line])).lines;
    expect(first?.spelt).toEqual({
      label: 'A',
      setting: { speedMmPerS: 14, powerPct: 30, passes: 1 },
    });
    expect(lengths(dxf([line], { units: 1 }))).toEqual([127]);
    expect(read(dxf([line], { units: 0 })).noticed.map(({ code }) => code)).toEqual([
      'check-units-assumed',
    ]);
  });

  it('says what it did not read, and refuses text that is still text', () => {
    const point = [0, 'POINT', 8, '0', 10, 0, 20, 0];
    const text = [0, 'TEXT', 8, '0', 10, 3, 20, 4, 40, 5, 1, 'Open'];
    const more = [0, 'MTEXT', 8, '0', 10, 0, 20, 0, 1, '{\\fArial|b0;daily\\Ptoo}'];
    const { noticed } = read(dxf([point, point, text, more, line]));
    expect(noticed).toEqual([
      {
        severity: 'fault',
        code: 'check-text-not-lines',
        params: { words: 'Open', xMm: 3, yMm: 4, count: 2 },
      },
      { severity: 'remark', code: 'check-part-not-read', params: { what: 'POINT', count: 2 } },
    ]);
    expect(param(read(dxf([more])).noticed[0], 'words')).toBe('daily too');
  });

  it('reads polylines of the old kind, with bulges, without their frames, and without an end', () => {
    const head = [0, 'POLYLINE', 8, '0', 66, 1, 70, 1];
    const vertex = (x: number, y: number, ...more: Row): Row => [
      0,
      'VERTEX',
      8,
      '0',
      10,
      x,
      20,
      y,
      ...more,
    ];
    const square = [
      head,
      vertex(0, 0),
      vertex(10, 0, 42, 1),
      vertex(10, 10),
      vertex(5, 99, 70, 16),
      vertex(0, 10),
    ];
    const end = [0, 'SEQEND'];
    const found = lengths(dxf([...square, end, line]));
    expect(found[0]).toBeCloseTo(30 + 5 * Math.PI, 1);
    expect(found[1]).toBe(5);
    expect(lengths(dxf([...square, line]))).toEqual(found);
    const mesh = [0, 'POLYLINE', 8, '0', 70, 64];
    expect(param(read(dxf([mesh, vertex(0, 0), vertex(1, 1), end])).noticed[0], 'what')).toBe(
      'POLYLINE',
    );
  });

  it('reads splines: weights make a circle (Piegl & Tiller, The NURBS Book, 7.5)', () => {
    const w = Math.SQRT1_2;
    const at = [
      [5, 0],
      [5, 5],
      [0, 5],
      [-5, 5],
      [-5, 0],
      [-5, -5],
      [0, -5],
      [5, -5],
      [5, 0],
    ] as const;
    const circle = [
      ...[0, 'SPLINE', 8, '0', 70, 12, 71, 2],
      ...[0, 0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 4].flatMap((knot) => [40, knot]),
      ...[1, w, 1, w, 1, w, 1, w, 1].flatMap((weight) => [41, weight]),
      ...at.flatMap(([x, y]) => [10, x, 20, y, 30, 0]),
    ];
    const toolpath = read(dxf([circle]));
    expect(toolpath.noticed).toEqual([]);
    expect(toolpath.lines).toHaveLength(1);
    for (const [x, y] of toolpath.lines[0]?.points ?? [])
      expect(Math.hypot(x, y)).toBeCloseTo(5, 9);
    const fitted = [0, 'SPLINE', 8, '0', 70, 8, 71, 3, 11, 0, 21, 0, 11, 3, 21, 4, 11, 6, 21, 8];
    expect(lengths(dxf([fitted]))[0]).toBeCloseTo(10, 9);
    expect(read(dxf([fitted])).noticed.map(({ code }) => code)).toEqual(['check-curve-guessed']);
    const broken = [0, 'SPLINE', 8, '0', 71, 3, 40, 0, 10, 1, 20, 2];
    expect(read(dxf([broken])).noticed[0]?.params).toEqual({ what: 'SPLINE', count: 1 });
  });

  it('inserts blocks: base, scale, turn, rows and columns, blocks within blocks (DXF reference, INSERT)', () => {
    const unit = [0, 'LINE', 8, '0', 10, 1, 20, 1, 11, 2, 21, 1];
    const blocks = [
      [0, 'BLOCK', 2, 'One', 10, 1, 20, 1],
      unit,
      [0, 'ENDBLK'],
      [0, 'BLOCK', 2, 'Two', 10, 0, 20, 0],
      [0, 'INSERT', 8, '0', 2, 'ONE', 10, 5, 20, 0, 41, 2, 42, 2],
      [0, 'ENDBLK'],
    ];
    const ends = (entity: Row): readonly (readonly (readonly number[])[])[] =>
      read(dxf([entity], { blocks })).lines.map(({ points }) =>
        points.map(([x, y]) => [Number(x.toFixed(9)) + 0, Number(y.toFixed(9)) + 0]),
      );
    expect(ends([0, 'INSERT', 8, '0', 2, 'one', 10, 10, 20, 20, 41, 3, 50, 90])).toEqual([
      [
        [10, 20],
        [10, 23],
      ],
    ]);
    expect(ends([0, 'INSERT', 8, '0', 2, 'Two', 10, 0, 20, 100])).toEqual([
      [
        [5, 100],
        [7, 100],
      ],
    ]);
    const rows = [
      0,
      'INSERT',
      8,
      '0',
      2,
      'One',
      10,
      0,
      20,
      0,
      50,
      90,
      70,
      2,
      71,
      2,
      44,
      10,
      45,
      20,
    ];
    expect(ends(rows).map(([from]) => from)).toEqual([
      [0, 0],
      [0, 10],
      [-20, 0],
      [-20, 10],
    ]);
    const gone = [0, 'INSERT', 8, '0', 2, 'None', 10, 0, 20, 0];
    expect(param(read(dxf([gone])).noticed[0], 'what')).toBe('block None');
  });

  it('mirrors what is drawn from below (DXF reference, arbitrary axis algorithm)', () => {
    const below = [210, 0, 220, 0, 230, -1];
    const arc = [0, 'ARC', 8, '0', 10, 10, 20, 0, 40, 5, 50, 0, 51, 90, ...below];
    const points = read(dxf([arc])).lines[0]?.points ?? [];
    expect(points[0]?.[0]).toBeCloseTo(-15, 9);
    expect(points.at(-1)?.[0]).toBeCloseTo(-10, 9);
    expect(points.at(-1)?.[1]).toBeCloseTo(5, 9);
  });

  it('leaves out what is frozen, off, invisible or on the paper, and says so', () => {
    const layer = (name: string, flags: number, colour: number): Row => [
      0,
      'LAYER',
      2,
      name,
      70,
      flags,
      62,
      colour,
    ];
    const layers = [layer('Cold', 1, 3), layer('Dark', 0, -3), layer('Cut', 0, 1)];
    const on = (name: string, ...more: Row): Row => [
      0,
      'LINE',
      8,
      name,
      10,
      0,
      20,
      0,
      11,
      3,
      21,
      4,
      ...more,
    ];
    const blocks = [[0, 'BLOCK', 2, 'B', 10, 0, 20, 0], on('0'), on('Cut'), [0, 'ENDBLK']];
    const insert = (name: string): Row => [0, 'INSERT', 8, name, 2, 'B', 10, 0, 20, 0];
    const entities = [
      ...[on('Cold'), on('DARK'), on('Cut', 60, 1), on('Cut', 67, 1), on('Cut'), on('0')],
      ...[insert('Cold'), insert('Dark'), insert('Cut')],
    ];
    const { lines, noticed } = read(dxf(entities, { layers, blocks }));
    // Off hides only what takes the layer of its insert; frozen hides all.
    expect(lines.map((found) => [found.layer, found.colour])).toEqual([
      ['Cut', 'colour 1'],
      ['0', undefined],
      ['Cut', 'colour 1'],
      ['Cut', 'colour 1'],
      ['Cut', 'colour 1'],
    ]);
    expect(noticed).toEqual([
      { severity: 'remark', code: 'check-hidden-left-out', params: { count: 5, layer: 'Cold' } },
      { severity: 'remark', code: 'check-paper-left-out', params: { count: 1 } },
    ]);
  });

  it('takes colours from the entity, its layer or its insert', () => {
    const blocks = [
      [0, 'BLOCK', 2, 'B', 10, 0, 20, 0],
      [...line, 62, 0],
      [...line, 62, 5],
      line,
      [0, 'ENDBLK'],
    ];
    const layers = [[0, 'LAYER', 2, 'A 14.0mmps 30pct min30', 62, 2]];
    const { lines } = read(
      dxf([[0, 'INSERT', 8, '0', 2, 'B', 10, 0, 20, 0, 62, 6]], { blocks, layers }),
    );
    expect(lines.map(({ colour }) => colour)).toEqual(['colour 6', 'colour 5', 'colour 2']);
  });

  it('draws an ellipse to the last digit, and every curve within the tolerance in mm, not in units', () => {
    const wheel = [0, 'CIRCLE', 8, '0', 10, 0, 20, 0, 40, 2];
    const [rough = []] = read(dxf([wheel], { units: 6 })).lines.map(({ points }) => points);
    const [fine = []] = read(dxf([wheel], { units: 4 })).lines.map(({ points }) => points);
    // A wheel of 2 m needs more chords than one of 2 mm: √1000 times as many.
    expect(rough.length / fine.length).toBeGreaterThan(25);
    const ellipse = [
      0,
      'ELLIPSE',
      8,
      '0',
      10,
      0,
      20,
      0,
      11,
      0,
      21,
      5,
      31,
      0,
      40,
      0.6,
      41,
      0,
      42,
      Math.PI,
    ];
    const points = read(dxf([ellipse])).lines[0]?.points ?? [];
    expect(points[0]).toEqual([0, 5]);
    for (const [x, y] of points) expect((x / 3) ** 2 + (y / 5) ** 2).toBeCloseTo(1, 9);
    expect(Math.min(...points.map(([x]) => x))).toBeCloseTo(-3, 1);
  });

  it('finds the same as a reader that is not ours (dxf-parser 1.1.2)', () => {
    const number = fc.integer({ min: -1000, max: 1000 }).map((value) => value / 8);
    const row = fc.oneof(
      fc
        .tuple(number, number, number, number)
        .map(([x, y, u, v]): Row => [0, 'LINE', 8, 'L', 10, x, 20, y, 11, u, 21, v]),
      fc
        .array(fc.tuple(number, number), { minLength: 2, maxLength: 6 })
        .map((points): Row => [
          ...[0, 'LWPOLYLINE', 8, 'P', 90, points.length, 70, 0],
          ...points.flatMap(([x, y]) => [10, x, 20, y]),
        ]),
    );
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), (rows) => {
        const text = dxf(rows, { layers: [[0, 'LAYER', 2, 'L', 62, 1]] });
        const theirs = parseDxf(text).entities.map(({ layer, vertices }) => ({
          layer,
          points: (vertices as { x: number; y: number }[]).map(({ x, y }) => [x, y]),
        }));
        const still = (points: readonly (readonly number[])[]): boolean =>
          points.every(([x, y]) => x === points[0]?.[0] && y === points[0]?.[1]);
        const different = theirs
          .filter(({ points }) => !still(points))
          .map(({ layer, points }) => ({
            layer,
            points: points.filter(
              ([x, y], i) => i === 0 || x !== points[i - 1]?.[0] || y !== points[i - 1]?.[1],
            ),
          }));
        expect(read(text).lines.map(({ layer, points }) => ({ layer, points }))).toEqual(different);
      }),
    );
  });

  it(
    'refuses what is hostile in a moment: blocks within themselves, endless copies, heavy splines',
    { timeout: 10_000 },
    () => {
      const code = (text: string): string => {
        const outcome = readDxf(text);
        return outcome.ok ? 'none' : outcome.problem.code;
      };
      const insert = (name: string, ...more: Row): Row => [
        0,
        'INSERT',
        8,
        '0',
        2,
        name,
        10,
        0,
        20,
        0,
        ...more,
      ];
      const block = (name: string, ...parts: readonly Row[]): readonly Row[] => [
        [0, 'BLOCK', 2, name, 10, 0, 20, 0],
        ...parts,
        [0, 'ENDBLK'],
      ];
      const itself = [...block('A', insert('B')), ...block('B', insert('A'))];
      expect(code(dxf([insert('A')], { blocks: itself }))).toBe('drawing-copies-itself');
      const doubling = Array.from({ length: 64 }, (_, i) =>
        block(`B${String(i)}`, insert(`B${String(i + 1)}`), insert(`B${String(i + 1)}`)),
      ).flat();
      expect(code(dxf([insert('B0')], { blocks: doubling }))).toBe('drawing-too-many-parts');
      const field = insert('E', 70, 32767, 71, 32767);
      expect(code(dxf([field], { blocks: block('E') }))).toBe('drawing-too-many-parts');
      expect(code(dxf([insert('E', 70, 1e300)], { blocks: block('E') }))).toBe(
        'drawing-too-many-parts',
      );
      const deep = Array.from({ length: 300 }, (_, i) =>
        block(`D${String(i)}`, insert(`D${String(i + 1)}`)),
      ).flat();
      expect(code(dxf([insert('D0')], { blocks: deep }))).toBe('drawing-unreadable');
      const heavy = [
        0,
        'SPLINE',
        8,
        '0',
        71,
        25,
        ...Array.from({ length: 3000 }, (_, i) => [40, i, 10, i, 20, 0]).flat(),
      ];
      expect(code(dxf([heavy]))).toBe('drawing-too-many-points');
      const wide = Array.from({ length: 1_000_004 }, (_, i) => `40\n${String(i)}`).join('\n');
      const million = `0\nSPLINE\n8\n0\n71\n3\n${wide}\n${'10\n1\n20\n2\n'.repeat(1_000_000)}`;
      expect(code(`0\nSECTION\n2\nENTITIES\n${million}0\nENDSEC\n0\nEOF`)).toBe(
        'drawing-too-many-points',
      );
    },
  );

  it('never throws, whatever it is', () => {
    const code = fc.constantFrom(
      0,
      2,
      8,
      10,
      11,
      20,
      21,
      30,
      40,
      41,
      42,
      50,
      51,
      62,
      67,
      70,
      71,
      210,
      220,
      230,
    );
    const value = fc.constantFrom(
      'LINE',
      'SPLINE',
      'INSERT',
      'POLYLINE',
      'VERTEX',
      'SEQEND',
      'BLOCK',
      'ENDBLK',
      'LWPOLYLINE',
      'ELLIPSE',
      'ARC',
      'MTEXT',
      'A',
      '0',
      '1',
      '-1',
      '2',
      '3',
      '1e300',
      'NaN',
      '',
      'SECTION',
      'ENTITIES',
      'ENDSEC',
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(code, value), { maxLength: 60 }),
        fc.boolean(),
        (groups, inBlocks) => {
          const body = groups.map(([c, v]) => `${String(c)}\n${v}`).join('\n');
          const where = inBlocks ? 'BLOCKS' : 'ENTITIES';
          const outcome = readDxf(`0\nSECTION\n2\n${where}\n${body}\n0\nEOF\n`);
          if (outcome.ok)
            for (const { points } of outcome.value.lines)
              expect(points.flat().every((mm) => Math.abs(mm) <= 100_000)).toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('refuses rubbish and absurd numbers', () => {
    const code = (text: string): string => {
      const outcome = readDxf(text);
      return outcome.ok ? 'none' : outcome.problem.code;
    };
    expect(code('0\nSECTION\n2\nENTITIES\n0')).toBe('drawing-unreadable');
    expect(code('no dxf')).toBe('drawing-unreadable');
    const far = [0, 'LINE', 8, '0', 10, 0, 20, 0, 11, 1e12, 21, 4];
    expect(code(dxf([far]))).toBe('drawing-number-absurd');
    const nowhere = [0, 'LINE', 8, '0', 10, 'NaN', 20, 0, 11, 3, 21, 4];
    expect(read(dxf([nowhere])).noticed[0]?.params).toEqual({ what: 'LINE', count: 1 });
  });
});
