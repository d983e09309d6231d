import { describe, expect, it } from 'vitest';

import type { Toolpath } from '../../core/filecheck/toolpath.ts';
import { boxAround } from '../../core/path/box.ts';
import { lengthMm } from '../../core/path/polyline.ts';
import { readSvg } from './readSvg.ts';

const read = (text: string): Toolpath => {
  const outcome = readSvg(text);
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};
const refusal = (text: string): string => {
  const outcome = readSvg(text);
  return outcome.ok ? 'none' : outcome.problem.code;
};
const inMm = (body: string): Toolpath =>
  read(
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="50mm" viewBox="0 0 100 50">${body}</svg>`,
  );
const boxOf = (toolpath: Toolpath) => boxAround(toolpath.lines.map(({ points }) => points));

describe('reading SVG', () => {
  it('turns y upwards and keeps mm', () => {
    expect(inMm('<path d="M10 10L20 10"/>').lines[0]?.points).toEqual([
      [10, 40],
      [20, 40],
    ]);
  });

  it('knows units: an inch is 25.4 mm, 96 px or 72 pt (CSS Values 3, 5.2)', () => {
    for (const width of ['4in', '101.6mm', '10.16cm', '384px', '384', '288pt', '24pc']) {
      const height = width.replace(/[\d.]+/, (value) => String(Number(value) / 2));
      const toolpath = read(
        `<svg width="${width}" height="${height}" viewBox="0 0 400 200"><path d="M0 0H400"/></svg>`,
      );
      expect(toolpath.lines.map(({ points }) => lengthMm(points))[0]).toBeCloseTo(101.6, 6);
    }
    const unsaid = read('<svg viewBox="0 0 96 96"><path d="M0 0H96"/></svg>');
    expect(unsaid.noticed.map(({ code }) => code)).toEqual(['check-units-assumed']);
    expect(unsaid.lines.map(({ points }) => lengthMm(points))[0]).toBeCloseTo(25.4, 6);
  });

  it('carries out transforms from the inside out', () => {
    const toolpath = inMm(
      '<g transform="translate(10,5)"><g transform="scale(2)"><path transform="rotate(90)" d="M0 0H3"/></g></g>',
    );
    const [from, to] = toolpath.lines[0]?.points ?? [];
    expect(from).toEqual([10, 45]);
    expect(to?.[0]).toBeCloseTo(10, 9);
    expect(to?.[1]).toBeCloseTo(39, 9);
  });

  it('reads every plain shape: a circle of 10 mm is 31.416 mm round (Euclid)', () => {
    const round = inMm('<circle cx="20" cy="20" r="5"/><ellipse cx="50" cy="20" rx="5" ry="5"/>');
    for (const { points } of round.lines) expect(lengthMm(points)).toBeCloseTo(10 * Math.PI, 1);
    const straight = inMm(
      '<rect x="1" y="2" width="3" height="4"/><line x1="0" y1="0" x2="3" y2="4"/><polyline points="0,0 3,4 6,0"/><polygon points="0 0 3 0 3 4"/>',
    );
    expect(straight.lines.map(({ points }) => lengthMm(points))).toEqual([14, 5, 10, 12]);
    const soft = inMm('<rect x="0" y="0" width="20" height="10" rx="5"/>');
    expect(soft.lines.map(({ points }) => lengthMm(points))[0]).toBeCloseTo(20 + 10 * Math.PI, 1);
  });

  it('draws curves within 0.02 mm: a quarter of a circle by its usual cubic', () => {
    const k = 0.5522847498;
    const toolpath = inMm(
      `<path d="M40 25C40 ${String(25 - 20 * k)} ${String(20 + 20 * k)} 5 20 5"/>`,
    );
    for (const [x, y] of toolpath.lines[0]?.points ?? []) {
      expect(Math.abs(Math.hypot(x - 20, y - 25) - 20)).toBeLessThan(0.03);
    }
    expect(boxOf(inMm('<path d="M0 50Q50 0 100 50"/>'))?.topMm).toBeCloseTo(25, 1);
  });

  it('goes on from the first point of a closed part, as the SVG grammar has it', () => {
    const toolpath = inMm('<path d="M10 10h10v10zl5 5"/>');
    expect(toolpath.lines.map(({ points }) => points.length)).toEqual([4, 2]);
    expect(toolpath.lines[1]?.points[0]).toEqual([10, 40]);
  });

  it('takes names from the nearest group that spells a setting, colours from wherever they stand', () => {
    const toolpath = inMm(
      '<g id="A_14.0mmps_30pct_min30" style="fill:none;stroke:#AA0000"><g id="x"><path id="cell-A1" d="M0 0h1"/></g></g><path stroke="blue" d="M0 0h2"/>',
    );
    expect(toolpath.lines[0]).toMatchObject({
      spelt: { label: 'A', setting: { speedMmPerS: 14, powerPct: 30, passes: 1 } },
      cell: { id: 'A1' },
      colour: '#aa0000',
    });
    expect(toolpath.lines[1]).toMatchObject({ colour: 'blue' });
    expect(toolpath.lines[1]?.spelt).toBeUndefined();
  });

  it('says what it did not read', () => {
    const toolpath = inMm(
      '<text>A</text><text>B</text><defs><path d="M0 0h9"/></defs><path d="M0 0L oops"/>',
    );
    expect(toolpath.lines).toEqual([]);
    expect(toolpath.noticed.map(({ code, params }) => [code, params['what']])).toEqual([
      ['check-part-not-read', 'path'],
      ['check-part-not-read', 'text'],
    ]);
  });

  it('refuses hostile files in a moment', () => {
    const bomb =
      '<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;&a;">]><svg width="9mm" height="9mm"><text>&b;</text></svg>';
    expect(refusal(bomb)).toBe('drawing-declares-entities');
    expect(refusal(`<svg>${'<g>'.repeat(100_000)}`)).toBe('drawing-unreadable');
    expect(
      refusal('<svg width="9mm" height="9mm" viewBox="0 0 9 9"><path d="M0 0L1e300 0"/></svg>'),
    ).toBe('drawing-number-absurd');
    expect(
      refusal(
        '<svg width="9mm" height="9mm" viewBox="0 0 9 9"><g transform="scale(1e308)"><path d="M0 0h9"/></g></svg>',
      ),
    ).toBe('drawing-number-absurd');
    expect(refusal('<svg><path d="M0 0"></svg>')).toBe('drawing-unreadable');
    expect(refusal('<html></html>')).toBe('drawing-unreadable');
    expect(refusal('<svg>&unknown;</svg>')).toBe('drawing-unreadable');
  });
});
