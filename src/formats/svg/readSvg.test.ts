import { param } from '../../../test/samples/param.ts';
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

  it('turns about the origin that is said, in lengths, shares of the view or by its sides (CSS Transforms 1, 4)', () => {
    const half = 'rotate(180)';
    for (const origin of ['20 10', '20px 10px', '20% 20%', '1.25em 10px']) {
      const at = boxOf(
        inMm(`<path transform="${half}" transform-origin="${origin}" d="M10 10L20 10"/>`),
      );
      expect(at?.leftMm).toBeCloseTo(20, 9);
      expect(at?.rightMm).toBeCloseTo(30, 9);
      expect(at?.topMm).toBeCloseTo(40, 9);
    }
    const byStyle = `<path style="transform:scale(2);transform-origin:right bottom" d="M90 40L100 50"/>`;
    const box = boxOf(inMm(byStyle));
    expect([box?.leftMm, box?.rightMm, box?.bottomMm]).toEqual([80, 100, 0]);
    const centred = boxOf(
      inMm('<path transform="scale(-1 1)" transform-origin="center" d="M10 5H20"/>'),
    );
    expect([centred?.leftMm, centred?.rightMm]).toEqual([80, 90]);
  });

  it('takes em from the letters that are said, else 16 px (CSS Values 3, 5.1)', () => {
    const wide = (body: string): number => {
      const box = boxOf(inMm(body));
      return box === undefined ? NaN : box.rightMm - box.leftMm;
    };
    expect(wide('<rect width="2em" height="1"/>')).toBeCloseTo(32, 9);
    expect(wide('<g font-size="10"><rect width="2em" height="1"/></g>')).toBeCloseTo(20, 9);
    expect(
      wide('<g style="font-size:10px"><g font-size="150%"><rect width="1em" height="1"/></g></g>'),
    ).toBeCloseTo(15, 9);
    const page = read('<svg width="10em" height="5em"><path d="M0 0H160"/></svg>').page;
    expect(page?.widthMm).toBeCloseTo((160 * 25.4) / 96, 9);
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
    expect(toolpath.lines[1]).toMatchObject({ colour: '#0000ff' });
    expect(toolpath.lines[1]?.spelt).toBeUndefined();
  });

  it('says what it did not read', () => {
    const toolpath = inMm(
      '<image href="a.png"/><image href="b.png"/><defs><path d="M0 0h9"/></defs><path d="M0 0L oops"/><path d="M0 0h1" clip-path="url(#c)" stroke-dasharray="1 2"/><use href="other.svg#a"/><g transform="turn(3)"><path d="M0 0v1"/></g>',
    );
    expect(toolpath.lines).toHaveLength(2);
    expect(toolpath.noticed.map((one) => [one.code, param(one, 'what')])).toEqual([
      ['check-part-not-read', 'path at 0 0L oops'],
      ['check-part-not-read', 'transform turn(3)'],
      ['check-part-not-read', 'image'],
      ['check-part-not-read', 'clip-path'],
      ['check-part-not-read', 'stroke-dasharray'],
      ['check-part-not-read', 'use other.svg#a'],
    ]);
  });

  it('refuses text that is still text, with what it says and where it stands', () => {
    const toolpath = inMm(
      '<g transform="translate(10 5)"><text x="2" y="3">Open\n <tspan>daily</tspan></text></g><text> </text><text>B</text><path d="M0 0h1"/>',
    );
    expect(toolpath.lines).toHaveLength(1);
    expect(toolpath.noticed).toEqual([
      {
        severity: 'fault',
        code: 'check-text-not-lines',
        params: { words: 'Open daily', xMm: 12, yMm: 42, count: 2 },
      },
    ]);
  });

  const codes = (toolpath: Toolpath): readonly (readonly unknown[])[] =>
    toolpath.noticed.map((one) => [one.code, param(one, 'count')]);
  const reaches = (toolpath: Toolpath): readonly number[] =>
    toolpath.lines.map(({ points }) => Number(lengthMm(points).toFixed(3)));

  it('leaves hidden parts out and says so, whoever hides them: attribute, style or rule', () => {
    const toolpath = inMm(
      `<style>.off{display:none} #ghost{visibility:hidden}</style>
       <g id="layer 2" display="none"><path d="M0 0h1"/><g style="display:inline"><path d="M0 0h2"/></g></g>
       <g style="display:none"><use href="#a"/><text>gone</text></g>
       <path class="cut off" d="M0 0h3"/>
       <g id="ghost"><path d="M0 0h4"/><path visibility="visible" d="M0 0h5"/></g>
       <path id="a" d="M0 0h6"/>`,
    );
    expect(reaches(toolpath)).toEqual([5, 6]);
    expect(toolpath.noticed).toEqual([
      {
        severity: 'remark',
        code: 'check-hidden-left-out',
        params: { count: 5, layer: 'layer 2' },
      },
    ]);
  });

  it('cuts what cannot be seen, and says so: opacity 0, neither stroke nor fill', () => {
    const toolpath = inMm(
      `<path d="M0 0h1"/><g opacity="0"><path d="M0 0h2"/></g><path style="fill:none" d="M0 0h3"/>
       <path fill="none" stroke="red" stroke-opacity="0" d="M0 0h4"/><path fill="none" stroke="red" d="M0 0h5"/>`,
    );
    expect(reaches(toolpath)).toEqual([1, 2, 3, 4, 5]);
    expect(codes(toolpath)).toEqual([['check-unseen-cut', 3]]);
    expect(param(toolpath.noticed[0], 'where')).toBe(2);
  });

  it('takes the colour of the stroke, else of the fill, from attribute, style or rule', () => {
    const toolpath = inMm(
      `<style>.cut{stroke:#F00}</style><g stroke="lime"><path class="cut" d="M0 0h1"/><path d="M0 0h1"/>
       <path style="stroke:rgb(0,0,255)" d="M0 0h1"/><path stroke="none" fill="#0ff" d="M0 0h1"/></g>
       <path d="M0 0h1"/><g color="red" stroke="currentColor"><path d="M0 0h1"/></g>`,
    );
    expect(toolpath.lines.map(({ colour }) => colour)).toEqual([
      '#ff0000',
      '#00ff00',
      '#0000ff',
      '#00ffff',
      '#000000',
      '#ff0000',
    ]);
  });

  it('copies what use names: shapes, groups, symbols and drawings, in their own frames (SVG 2, 5.6)', () => {
    const toolpath = inMm(
      `<defs><path id="p" d="M0 0h1"/><g id="g"><use href="#p" transform="scale(2)"/></g></defs>
       <symbol id="s" viewBox="0 0 10 10"><path d="M0 0h10"/></symbol>
       <use href="#p" x="20" y="10"/><use xlink:href="#g" transform="scale(3)"/>
       <use href="#s" width="40" height="20"/><use href="#later"/><path id="later" d="M0 0h7"/>`,
    );
    expect(reaches(toolpath)).toEqual([1, 6, 20, 7, 7]);
    expect(toolpath.lines[0]?.points[0]).toEqual([20, 40]);
    // The symbol is fitted into 40 by 20 and stands in its middle.
    expect(toolpath.lines[2]?.points).toEqual([
      [10, 50],
      [30, 50],
    ]);
    expect(toolpath.noticed).toEqual([]);
  });

  it('fits nested drawings into their frames, with units and shares of what is around', () => {
    const toolpath = inMm(
      `<svg x="10" y="5" width="50%" height="20" viewBox="0 0 100 40" preserveAspectRatio="xMinYMin"><path d="M0 0h100"/><rect width="50%" height="1"/></svg>`,
    );
    expect(toolpath.lines[0]?.points).toEqual([
      [10, 45],
      [60, 45],
    ]);
    expect(reaches(toolpath)[1]).toBe(51);
    const inch = read('<svg width="3in" height="3in"><path d="M0 0h96"/><line x2="1in"/></svg>');
    expect(reaches(inch)).toEqual([25.4, 25.4]);
  });

  it('takes of a switch the first that it can read (SVG 2, 5.8)', () => {
    const toolpath = inMm(
      `<switch><foreignObject requiredExtensions="http://example.org/own/"><p/></foreignObject><g systemLanguage="de"><path d="M0 0h1"/></g><g><path d="M0 0h2"/></g><g><path d="M0 0h3"/></g></switch>`,
    );
    expect(reaches(toolpath)).toEqual([2]);
    expect(toolpath.noticed).toEqual([]);
  });

  it('puts a page whose sides do not match its viewBox as a viewer does (SVG 2, 8.2)', () => {
    const page = read(
      '<svg width="100mm" height="50mm" viewBox="0 0 10 10"><path d="M0 0h10"/></svg>',
    );
    expect(page.page).toEqual({ widthMm: 100, heightMm: 50 });
    expect(page.lines[0]?.points).toEqual([
      [25, 50],
      [75, 50],
    ]);
    const tall = read('<svg width="20mm" viewBox="0 0 10 30"><path d="M0 30h10"/></svg>');
    expect(tall.page).toEqual({ widthMm: 20, heightMm: 60 });
    expect(tall.lines[0]?.points[0]?.[1]).toBeCloseTo(0, 12);
  });

  it('knows the short words that drawing programs declare, and passes over what is not SVG’s own', () => {
    const toolpath = read(
      `<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "svg11.dtd" [<!ENTITY ns_own "http://example.org/own/"><!ENTITY s "5mm">]>
       <svg xmlns:own="&ns_own;" width="&s;" height="5mm" viewBox="0 0 5 5"><own:page><path d="M0 0h9"/></own:page><path own:kind="x" d="M0 0h1"/></svg>`,
    );
    expect(reaches(toolpath)).toEqual([1]);
    const prefixed = read(
      '<svg:svg width="9mm" height="9mm" viewBox="0 0 9 9"><svg:g><svg:path d="M0 0h2"/></svg:g></svg:svg>',
    );
    expect(reaches(prefixed)).toEqual([2]);
  });

  it('keeps every chord within the tolerance that is asked for', () => {
    const round =
      '<svg width="100mm" height="100mm" viewBox="0 0 100 100"><circle cx="50" cy="50" r="40"/></svg>';
    for (const toleranceMm of [0.5, 0.01, 0.0001]) {
      const outcome = readSvg(round, { toleranceMm });
      const [line] = outcome.ok ? outcome.value.lines : [];
      line?.points.slice(1).forEach(([x, y], i) => {
        const [ax, ay] = line.points[i] ?? [0, 0];
        const strays = 40 - Math.hypot((x + ax) / 2 - 50, (y + ay) / 2 - 50);
        expect(strays).toBeGreaterThan(-1e-9);
        expect(strays).toBeLessThan(toleranceMm + 1e-9);
      });
      expect(line?.points.length).toBeGreaterThan(10);
    }
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
