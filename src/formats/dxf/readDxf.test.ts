import { describe, expect, it } from 'vitest';

import type { Toolpath } from '../../core/filecheck/toolpath.ts';
import { lengthMm } from '../../core/path/polyline.ts';
import { readDxf } from './readDxf.ts';

/** A whole DXF around some entities, each a row of group codes and values. */
const dxf = (entities: readonly (readonly (string | number)[])[], units = 4): string =>
  [
    [0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, units, 0, 'ENDSEC'],
    [0, 'SECTION', 2, 'ENTITIES'],
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
    expect(lengths(dxf([line], 1))).toEqual([127]);
    expect(read(dxf([line], 0)).noticed.map(({ code }) => code)).toEqual(['check-units-assumed']);
  });

  it('says what it did not read', () => {
    const text = [0, 'TEXT', 8, '0', 10, 0, 20, 0, 40, 5, 1, 'A'];
    const { noticed } = read(dxf([text, line]));
    expect(noticed).toEqual([
      { severity: 'remark', code: 'check-part-not-read', params: { what: 'TEXT', count: 1 } },
    ]);
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
