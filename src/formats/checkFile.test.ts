import { describe, expect, it } from 'vitest';

import { demoRequest } from '../../test/fixtures/cardRequest.ts';
import type { Card } from '../core/card/card.ts';
import { cardDrawing } from '../core/card/cardDrawing.ts';
import type { CardRequest } from '../core/card/cardRequest.ts';
import { designCard } from '../core/card/designCard.ts';
import { testShapeNames } from '../core/card/testShapes.ts';
import { checkToolpath, type CheckReport } from '../core/filecheck/checkToolpath.ts';
import type { Machine } from '../core/machine/machine.ts';
import { writeDxf } from './dxf/writeDxf.ts';
import { plainDialect } from '../core/dialect/gcodeDialect.ts';
import { writeGcode } from './gcode/writeGcode.ts';
import { readToolpath } from './readToolpath.ts';
import { writeSvg } from './svg/writeSvg.ts';

// A file is written, something is done to it that people and programs do, and it is read back: label against setting is a
// real trouble of cards that pass from hand to hand (common practice, no source).

const cardOf = (change: Partial<CardRequest> = {}): Card => {
  const outcome = designCard({ ...demoRequest, ...change });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value.card;
};
const write = {
  svg: (card: Card): string => writeSvg(cardDrawing(card), card.code),
  dxf: (card: Card): string => writeDxf(cardDrawing(card)),
  gcode: (card: Card): string => {
    const written = writeGcode(card, plainDialect);
    if (!written.ok) throw new Error(written.problem.code);
    return written.value;
  },
};
const kinds = ['svg', 'dxf', 'gcode'] as const;

const check = (text: string, against: { card?: Card; machine?: Machine } = {}): CheckReport => {
  const read = readToolpath(text);
  if (!read.ok) throw new Error(read.problem.code);
  return checkToolpath(read.value, against);
};
const faults = (report: CheckReport): readonly string[] =>
  report.findings
    .filter(({ severity }) => severity === 'fault')
    .map(({ code, cell }) => (cell === undefined ? code : `${code} ${cell}`));
const codes = (report: CheckReport): readonly string[] => report.findings.map(({ code }) => code);
const replaced = (text: string, from: string | RegExp, to: string): string => {
  const other = text.replace(from, to);
  if (other === text) throw new Error(`${String(from)} is not there`);
  return other;
};

describe('a card drawn when corner power was called otherwise', () => {
  // The words were longer: cards had room for them.
  const card = cardOf({ vary: 'corners', sizeMm: 30, sheetMm: [400, 300] });
  const named = (text: string) => text.replaceAll(/corner(?=\d)/g, 'min');
  const old = {
    svg: named(writeSvg(cardDrawing(card, 'before'), card.code)),
    dxf: named(writeDxf(cardDrawing(card, 'before'))),
  };

  it.each(['svg', 'dxf'] as const)('is the same card, as %s', (kind) => {
    expect(old[kind]).not.toBe(write[kind](card));
    expect(check(old[kind], { card }).findings).toEqual([]);
    expect(check(old[kind]).findings).toEqual([]);
  });

  it('is still held to its words', () => {
    const other = {
      ...card,
      rungs: card.rungs.map((rung, i) =>
        i === 0
          ? {
              ...rung,
              setting: { ...rung.setting, minPowerPct: (rung.setting.minPowerPct ?? 20) + 1 },
            }
          : rung,
      ),
    };
    expect(faults(check(old.svg, { card: other }))).toContain(
      `check-words-differ ${card.cells.find(({ rung }) => rung === card.rungs[0]?.letter)?.id ?? ''}`,
    );
  });
});

describe.each(kinds)('a card written as %s', (kind) => {
  it.each(testShapeNames)('and read back has neither faults nor remarks, as %s', (shape) => {
    const card = cardOf({ shape, sheetMm: [160, 120], air: 'pump', seed: 3 });
    const text = write[kind](card);
    expect(check(text, { card }).findings).toEqual([]);
    expect(check(text).findings).toEqual([]);
  });

  it('with two passes and with everything shuffled keeps what it says', () => {
    const card = cardOf({ vary: 'passes', sheetMm: [200, 120] });
    expect(faults(check(write[kind](card), { card }))).toEqual([]);
    const free = cardOf({ order: 'free' });
    // Only a program carries that order: a drawing goes layer by layer, and that is no fault of it.
    expect(faults(check(write[kind](free), { card: free }))).toEqual([]);
  });

  it('is told from another card, of other places or of other settings', () => {
    const report = check(write[kind](cardOf({ sizeMm: 10, shape: 'comb' })), { card: cardOf() });
    expect(report.ok).toBe(false);
    const faster = cardOf({ believed: () => ({ v50MmPerS: 22, lnSd: 0.3 }) });
    const found = faults(check(write[kind](faster), { card: cardOf() }));
    expect(found).toContain('check-cell-differs A1');
    expect(found).toContain('check-words-differ A1');
  });
});

describe('a slip in one cell is found and named', () => {
  const card = cardOf();
  const speed = (rung: string): number =>
    card.rungs.find(({ letter }) => letter === rung)?.setting.speedMmPerS ?? 0;

  it('in G-code: a changed feed, with the card and by its own label', () => {
    const text = write.gcode(card);
    const at = text.indexOf('(B2 ');
    const slip = text.slice(0, at) + replaced(text.slice(at), /F\d+/, 'F1234');
    expect(faults(check(slip, { card }))).toEqual([
      'check-label-differs B2',
      'check-cell-differs B2',
    ]);
    expect(faults(check(slip))).toEqual(['check-label-differs B2']);
  });

  it('in G-code: a changed power, a changed label, a second pass, a feed that changes on the way', () => {
    const text = write.gcode(card);
    const at = text.indexOf('(C1 ');
    const inCell = (from: string | RegExp, to: string): string =>
      text.slice(0, at) + replaced(text.slice(at), from, to);
    expect(faults(check(inCell('S340', 'S400'), { card }))).toContain('check-cell-differs C1');
    expect(faults(check(inCell(/\(C1 [^)]*\)/, '(C1 9 mm/s 34%)')))).toEqual([
      'check-label-differs C1',
    ]);
    const cell = text.slice(at, text.indexOf('M5 S0', at) + 6);
    expect(faults(check(text.replace(cell, cell + cell), { card }))).toContain(
      'check-cell-differs C1',
    );
    expect(faults(check(inCell(/\nX([\d.]+) Y/, '\nF600 X$1 Y'), { card }))).toContain(
      'check-cell-mixed C1',
    );
  });

  it('in SVG: two rungs whose names are exchanged', () => {
    const text = write.svg(card);
    const name = (rung: string): string => `${rung}_${speed(rung).toFixed(1)}mmps_34pct_corner34`;
    const swapped = text
      .replaceAll(name('A'), 'held')
      .replaceAll(name('A').replaceAll('_', ' '), 'held too')
      .replaceAll(`B_${speed('B').toFixed(1)}`, `B_${speed('A').toFixed(1)}`)
      .replaceAll(`B ${speed('B').toFixed(1)}`, `B ${speed('A').toFixed(1)}`)
      .replaceAll('held too', name('A').replaceAll('_', ' '))
      .replaceAll('held', name('A'));
    expect(faults(check(swapped, { card }))).toEqual(
      expect.arrayContaining(['check-cell-differs B1', 'check-cell-differs B2']),
    );
    expect(faults(check(swapped))).toEqual(['check-words-differ B1', 'check-words-differ B2']);
  });

  it('in SVG: a name and a title that say two things, a colour that is another rung’s', () => {
    const text = write.svg(card);
    const name = `A_${speed('A').toFixed(1)}mmps`;
    expect(faults(check(replaced(text, name, 'A_99.0mmps')))).toContain('check-layer-differs');
    const colours = [...text.matchAll(/stroke="(#[0-9a-f]{6})"/g)].map(
      ([, colour]) => colour ?? '',
    );
    const [, a = '', b = ''] = colours;
    expect(faults(check(text.replace(b, a)))).toContain('check-colour-shared');
    expect(faults(check(text.replace(b, a), { card }))).toContain('check-colour-differs B1');
  });

  it('in DXF: a layer that spells another speed', () => {
    const text = write.dxf(card);
    const slip = text.replaceAll(`D ${speed('D').toFixed(1)}mmps`, 'D 77.0mmps');
    expect(faults(check(slip, { card }))).toEqual(
      expect.arrayContaining(['check-cell-differs D1', 'check-cell-differs D2']),
    );
    expect(
      faults(check(slip)).filter((fault) => fault.startsWith('check-words-differ')),
    ).toHaveLength(2);
  });

  it('in any: a cell that is gone, one that was drawn in beside', () => {
    const text = write.svg(card);
    const without = replaced(text, /<path id="cell-E1"[^>]*>/, '');
    expect(faults(check(without, { card }))).toEqual(['check-cell-missing E1']);
    const more = replaced(text, '</svg>', '<path d="M1 30L1 32" stroke="#000"/></svg>');
    expect(faults(check(more, { card }))).toContain('check-line-unknown');
  });
});

describe('the order', () => {
  const card = cardOf();
  const svg = write.svg(card);
  const groups = [...svg.matchAll(/<g [\s\S]*?<\/g>/g)].map(([group]) => group);
  const reordered = (order: readonly (string | undefined)[]): string =>
    `${svg.slice(0, svg.indexOf('<g '))}${order.join('\n')}</svg>`;

  it('outline last and marks first, with the card and without (common practice, no source)', () => {
    const outlineFirst = reordered([groups.at(-1), ...groups.slice(0, -1)]);
    expect(faults(check(outlineFirst, { card }))).toContain('check-outline-early F2');
    expect(faults(check(outlineFirst))).toContain('check-inside-after-outside');
    const marksLast = reordered([...groups.slice(1), groups[0]]);
    expect(faults(check(marksLast, { card }))).toContain('check-marks-late');
  });

  it('of the cells is the card’s: a control program that sorts them is found out', () => {
    const sorted = reordered([groups[0], groups[2], groups[1], ...groups.slice(3)]);
    expect(faults(check(sorted, { card }))).toEqual(['check-order-differs B1']);
  });
});

describe('limits', () => {
  const machine: Machine = {
    maxPowerPct: 80,
    speedRangeMmPerS: [1, 100],
    bed: { widthMm: 600, heightMm: 400 },
  };
  const card = cardOf();

  it('of the bed: a file that was moved is still the card, and off the bed', () => {
    const moved = replaced(write.gcode(card), 'G17 G21 G90 G94', 'G17 G21 G90 G94\nG92 X-500 Y0');
    const report = check(moved, { card, machine });
    expect(faults(report)).toEqual(['check-outside-bed']);
    expect(codes(report)).not.toContain('check-offset-in-force');
    expect(check(write.gcode(card), { card, machine }).ok).toBe(true);
  });

  it('of the machine and its tube: a tube rated 19 mA reached it at about 65 % (common practice, no source)', () => {
    const tube = {
      ratedCurrentMa: 19,
      tubePoints: [
        { powerPct: 10, currentMa: 3 },
        { powerPct: 27, currentMa: 7.6 },
        { powerPct: 65, currentMa: 19 },
        { powerPct: 70, currentMa: 20.6 },
      ],
    };
    const at = (powerPct: number): string =>
      `G21 G90\n(S1000 is 100 pct)\nG0 X1 Y1\nM3 S${String(powerPct * 10)}\nG1 X9 F600\nM5\nM2`;
    expect(faults(check(at(70), { machine: { ...machine, ...tube } }))).toEqual([
      'check-overdrives',
    ]);
    expect(faults(check(at(60), { machine: { ...machine, ...tube } }))).toEqual([]);
    expect(faults(check(at(85), { machine }))).toEqual(['check-power-above-machine']);
    expect(faults(check(at(110), { machine }))).toContain('check-power-above-scale');
  });

  it('of speed: mm/s typed where mm/min belongs', () => {
    const slow = 'G21 G90\nG0 X1 Y1\nM3 S300\nG1 X9 F14\nM5\nM2';
    expect(faults(check(slow, { machine }))).toEqual(['check-speed-beyond-machine']);
  });

  it('of energy: no cell above three times what was believed, no mark that would cut', () => {
    // A rung in the middle of the ladder: at a third of its speed it gets more than three times what is believed to do.
    const [slow] = [...card.rungs]
      .sort((a, b) => a.setting.speedMmPerS - b.setting.speedMmPerS)
      .slice(1);
    const feed = Math.round((slow?.setting.speedMmPerS ?? 0) * 60);
    const slowed = write
      .gcode(card)
      .replaceAll(`F${String(feed)} S340`, `F${String(Math.round(feed / 3))} S340`);
    expect(faults(check(slowed, { card }))).toContain(
      `check-above-energy-ceiling ${slow?.letter ?? ''}1`,
    );
    const hotMarks = write.gcode(card).replaceAll('F5400 S140', 'F1200 S340');
    expect(faults(check(hotMarks, { card }))).toContain('check-marks-would-cut');
    expect(faults(check(hotMarks))).toContain('check-marks-would-cut');
  });
});

describe('any G-code', () => {
  const body = 'G0 X10 Y10\nM3 S300\nG1 X30 F600\nY30\nX10\nY10\nM5\nM2';

  it('without faults has none, and is not said to be safe', () => {
    const report = check(`G21 G90\n${body}`);
    expect(report.ok).toBe(true);
    expect(codes(report)).toEqual(['check-power-scale-unknown']);
    expect(report.lengthMm).toBeCloseTo(80, 9);
  });

  it('has traps of mode', () => {
    expect(codes(check(body))).toEqual(
      expect.arrayContaining(['check-units-unsaid', 'check-distance-unsaid']),
    );
    const beamOn = 'G21 G90\nM3 S300\nG0 X10 Y10\nG1 X30 F600';
    expect(faults(check(beamOn))).toEqual(['check-beam-on-in-travel', 'check-beam-left-on']);
    expect(codes(check(beamOn))).toContain('check-program-unended');
    expect(codes(check('G21 G91\nG0 X5\nM4 S10\nG1 X5 F100\nM5'))).toContain('check-left-relative');
    expect(codes(check('G20 G90\nM4 S10\nG1 X5 F100\nM5'))).toContain('check-left-inches');
    expect(faults(check('G21 G90\nM3 S100\nG1 X5 F100\nG4 P2\nM5\nM2'))).toEqual([
      'check-beam-on-standing',
    ]);
    expect(codes(check('G21 G90\nG92 X5\nM4 S10\nG1 X9 F100\nM5'))).toContain(
      'check-offset-in-force',
    );
    expect(codes(check(`G21 G90\nM106\n${body}`))).toContain('check-words-passed-over');
    expect(faults(check('G21 G90\nG0 X5\nM2'))).toEqual(['check-nothing-cut']);
  });

  it('has a cell that takes its setting over from the one before', () => {
    const inherits = [
      'G21 G90\n(S1000 is 100 pct)\n(A 10.0mmps 30pct corner30)\n(A1 10 mm/s 30%)\nG0 X0 Y0\nM3\nG1 X9 F600 S300\nM5',
      '(A2 10 mm/s 30%)\nG0 X0 Y20\n\n\n\nM3\nG1 X9\nM5\nM2',
    ].join('\n');
    const found = check(inherits).findings.find(({ code }) => code === 'check-setting-inherited');
    expect(found?.cell).toBe('A2');
  });

  it('cuts inside before outside, wherever they stand', () => {
    const square = (x: number, size: number): string =>
      `G0 X${String(x)} Y${String(x)}\nM3 S300\nG1 X${String(x + size)} F600\nY${String(x + size)}\nX${String(x)}\nY${String(x)}\nM5`;
    const program = (...parts: readonly string[]): string => `G21 G90\n${parts.join('\n')}\nM2`;
    expect(faults(check(program(square(10, 5), square(0, 30))))).toEqual([]);
    expect(faults(check(program(square(0, 30), square(10, 5))))).toEqual([
      'check-inside-after-outside',
    ]);
    expect(faults(check(program(square(0, 9), square(10, 5))))).toEqual([]);
  });
});
