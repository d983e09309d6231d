import { describe, expect, it } from 'vitest';

import { demoRequest, requestWithoutTrusted } from '../../../test/fixtures/cardRequest.ts';
import type { Card } from '../../core/card/card.ts';
import type { CardRequest } from '../../core/card/cardRequest.ts';
import { designCard } from '../../core/card/designCard.ts';
import { plainDialect, type GcodeDialect } from '../../core/dialect/gcodeDialect.ts';
import { writeGcode } from './writeGcode.ts';

const cardOf = (change: Partial<CardRequest> = {}): Card => {
  const outcome = designCard({ ...demoRequest, ...change });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value.card;
};
const gcode = (change: Partial<CardRequest> = {}, dialect: Partial<GcodeDialect> = {}): string => {
  const outcome = writeGcode(cardOf(change), { ...plainDialect, ...dialect });
  if (!outcome.ok) throw new Error(outcome.problem.code);
  return outcome.value;
};
const one: Partial<CardRequest> = {
  rungs: [{ powerPct: 30, speedMmPerS: 14, passes: 1, air: 'pump' }],
  cellsEach: 1,
};
/** The lines of one cell. */
const cellLines = (text: string, id: string): readonly string[] => {
  const lines = text.split('\n');
  const start = lines.findIndex((line) => line.startsWith(`(${id} `));
  return lines.slice(start, lines.indexOf('M5 S0', start) + 1);
};

describe('a card as G-code', () => {
  it('gives a cell its own words, feed and power: 14 mm/s is 840 mm/min, 30 % of 1000 is 300', () => {
    const lines = cellLines(gcode(one), 'A1');
    expect(lines[0]).toBe('(A1 14 mm/s 30%)');
    expect(lines[1]).toMatch(/^G0 X[\d.]+ Y[\d.]+$/);
    expect(lines[2]).toBe('M3 S0');
    expect(lines[3]).toMatch(/^G1 X[\d.]+ Y[\d.]+ F840 S300$/);
    expect(lines.at(-1)).toBe('M5 S0');
    expect(lines).toHaveLength(4 + 13 + 1);
  });

  it('speaks the dialect of the machine: scale of S, power that follows speed, air, own first and last lines', () => {
    const text = gcode(one, {
      sAtFullPower: 255,
      power: 'speed-following',
      airOn: 'M7',
      opening: ['(ours)'],
      closing: ['G0 X5 Y5', 'M30'],
    });
    expect(cellLines(text, 'A1')[2]).toBe('M4 S0');
    expect(cellLines(text, 'A1')[3]).toMatch(/ S76\.5$/);
    expect(text).toMatch(/\nM7\n\(A1 /);
    expect(text).toMatch(/\n\(ours\)\nM5\nG17 G21 G90 G94\n/);
    expect(text).toMatch(/\nM9\nG0 X5 Y5\nM30\n$/);
  });

  it('never travels with the beam on, and never lights it without moving', () => {
    let beam = false;
    for (const line of gcode({ passes: 2 } as Partial<CardRequest>).split('\n')) {
      if (/^M[34]\b/.test(line)) expect(line).toMatch(/ S0$/);
      if (line.startsWith('M5')) beam = false;
      if (/^(G1 |X)/.test(line)) beam = true;
      if (line.startsWith('G0')) expect(beam).toBe(false);
    }
  });

  it('goes over a cell once more for each further pass', () => {
    const twice = { ...one, rungs: [{ powerPct: 30, speedMmPerS: 24, passes: 2 }] };
    expect(cellLines(gcode(twice), 'A1')).toHaveLength(4 + 27 + 1);
  });

  it('cuts marks first, then the cells in the card’s own order, mixed where it is mixed, outline last', () => {
    for (const order of ['by-rung', 'free'] as const) {
      const card = cardOf({ order });
      const text = gcode({ order });
      const cells = [...text.matchAll(/^\(([A-Z]\d+) \d/gm)].map(([, id]) => id);
      expect(cells).toEqual(card.cells.map((cell) => cell.id));
      expect(text.indexOf('(marks')).toBeLessThan(text.indexOf('(A1 '));
      expect(text.indexOf('(outline')).toBeGreaterThan(text.lastIndexOf(' mm/s '));
    }
  });

  it('is plain signs in lines of no more than 80, notes and the card’s words included', () => {
    const note = `Never leave it (not once): a flame that stays is yours. ${'word '.repeat(40)}It’s so.`;
    const written = writeGcode(cardOf(), plainDialect, [note]);
    if (!written.ok) throw new Error(written.problem.code);
    for (const line of written.value.split('\n')) {
      expect(line).toMatch(/^[ -~]*$/);
      expect(line.length).toBeLessThanOrEqual(80);
      expect(line).toMatch(/^(\([^()]*\)|[^()]*)$/);
    }
    expect(written.value).toContain("It's so.");
    const units = writeGcode(cardOf(), plainDialect, ['A piece of 60\u202fmm × 40\u00a0mm.']);
    expect(units.ok && units.value).toContain('(A piece of 60 mm x 40 mm.)');
  });

  it('is refused while a layer has no setting', () => {
    const card = { ...cardOf() };
    Reflect.deleteProperty(card, 'scoring');
    expect(writeGcode(card, plainDialect)).toEqual({
      ok: false,
      problem: { code: 'gcode-layer-without-setting', params: { layer: 'marks' } },
    });
  });

  it('needs no trusted setting: then nothing is cut beside marks and cells', () => {
    const outcome = designCard(requestWithoutTrusted);
    if (!outcome.ok) throw new Error(outcome.problem.code);
    const text = writeGcode(outcome.value.card, plainDialect);
    expect(text.ok && /outline|window/.test(text.value)).toBe(false);
  });
});
