import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';

import { demoRequest } from '../../test/fixtures/cardRequest.ts';
import { cardDrawing } from '../core/card/cardDrawing.ts';
import { cardTime } from '../core/card/cardTime.ts';
import { designCard } from '../core/card/designCard.ts';
import { writeCardFile } from '../formats/cardFile.ts';
import { writeDxf } from '../formats/dxf/writeDxf.ts';
import { plainDialect } from '../core/dialect/gcodeDialect.ts';
import { writeGcode } from '../formats/gcode/writeGcode.ts';
import { writeSvg } from '../formats/svg/writeSvg.ts';
import { runTime } from './time.ts';

let folder = '';
let printed = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-time-'));
  printed = '';
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    printed += String(text);
    return true;
  });
});
afterEach(() => vi.restoreAllMocks());

const motion = {
  accelerationMmPerS2: 800,
  corner: { rule: 'junction-deviation', deviationMm: 0.02 },
  travelSpeedMmPerS: 200,
  timeErrorPct: 1.5,
} as const;
const file = (name: string, content: string): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};
const machine = (): string => file('machine.json', JSON.stringify({ version: 1, motion }));
const result = z.looseObject({
  seconds: z.number().nullable(),
  lowSeconds: z.number().optional(),
  highSeconds: z.number().optional(),
  goes: z.record(z.string(), z.number()).optional(),
});
const answer = (): z.infer<typeof result> => {
  const read = result.parse(JSON.parse(printed));
  printed = '';
  return read;
};
const errorCode = (): string => {
  const read = z
    .object({ error: z.object({ code: z.string(), remedy: z.string().min(5) }) })
    .parse(JSON.parse(printed));
  printed = '';
  return read.error.code;
};

const card = (() => {
  const designed = designCard(demoRequest);
  if (!designed.ok) throw new Error(designed.problem.code);
  return designed.value.card;
})();

describe('time FILE --machine', () => {
  it('takes as long over a card as SVG, as DXF and as G-code as over the card itself', async () => {
    const gcode = writeGcode(card, plainDialect);
    if (!gcode.ok) throw new Error(gcode.problem.code);
    const { seconds } = cardTime(card, motion);
    const files = {
      'card.svg': writeSvg(cardDrawing(card), 'Card'),
      'card.dxf': writeDxf(cardDrawing(card)),
      'card.gcode': gcode.value,
    };
    for (const [name, content] of Object.entries(files)) {
      expect(await runTime(file(name, content), { machine: machine() })).toBe(0);
      const told = answer();
      expect((told.seconds ?? 0) / seconds).toBeCloseTo(1, 2);
      expect(told.lowSeconds).toBeLessThan(told.seconds ?? 0);
      expect(told.highSeconds).toBeGreaterThan(told.seconds ?? 0);
      const goes = Object.values(told.goes ?? {}).reduce((sum, part) => sum + part, 0);
      expect(goes).toBeCloseTo(told.seconds ?? 0, 1);
    }
  });

  it('knows a straight G-code cut with a pause by hand: 2 s dwell, 100 mm at 10 mm/s (kinematics)', async () => {
    const program = 'G21 G90 G17 G94\nG4 P2\nM3 S500\nG1 X100 F600\nM5\nG0 X0\nM2\n';
    expect(await runTime(file('cut.gcode', program), { machine: machine() })).toBe(0);
    // 100/10 + 10/800; back: 100/200 + 200/800.
    expect(answer().seconds).toBeCloseTo(2 + 10.0125 + 0.75, 2);
  });

  it('says no time for a drawing that says no speed, until a speed is given', async () => {
    const plain = file(
      'plain.svg',
      '<svg xmlns="http://www.w3.org/2000/svg" width="99mm" height="99mm" viewBox="0 0 99 99"><path d="M0 99H50"/></svg>',
    );
    expect(await runTime(plain, { machine: machine() })).toBe(0);
    expect(answer()).toMatchObject({
      seconds: null,
      reason: { code: 'time-speed-unknown' },
      lines: 1,
      cutMm: 50,
    });
    expect(await runTime(plain, { machine: machine(), speed: '10' })).toBe(0);
    expect(answer().seconds).toBeCloseTo(5.01, 2);
    expect(await runTime(plain, { speed: '10' })).toBe(0);
    expect(answer()).toMatchObject({
      motion: 'assumed',
      remarks: [{ code: 'time-motion-assumed' }],
    });
  });

  it('says what was mistyped, from the time that the machine said', async () => {
    const svg = file('card.svg', writeSvg(cardDrawing(card), 'Card'));
    const cardFile = file('card.json', writeCardFile(card));
    const slow = cardTime(
      { ...card, scoring: { powerPct: 14, speedMmPerS: 9, passes: 1 } },
      motion,
    );
    const took = `${String(Math.floor(slow.seconds / 60))}:${String(Math.round(slow.seconds % 60) % 60).padStart(2, '0')}`;
    expect(await runTime(svg, { machine: machine(), card: cardFile, took })).toBe(0);
    expect(answer()['typing']).toMatchObject({
      verdict: 'mistyped',
      suspects: expect.arrayContaining([
        expect.objectContaining({
          label: 'marks',
          probably: { powerPct: 14, speedMmPerS: 9, passes: 1 },
        }),
      ]) as unknown,
    });
    const right = String(Math.round(cardTime(card, motion).seconds));
    expect(await runTime(svg, { machine: machine(), card: cardFile, took: right })).toBe(0);
    expect(answer()['typing']).toMatchObject({ verdict: 'as-expected', suspects: [] });
  });

  it('refuses bad input as the other commands do', async () => {
    const svg = file('card.svg', writeSvg(cardDrawing(card), 'Card'));
    expect(await runTime(join(folder, 'nowhere.svg'), {})).toBe(2);
    expect(errorCode()).toBe('file-not-found');
    expect(await runTime(file('words.txt', 'hello there'), {})).toBe(2);
    expect(errorCode()).toBe('drawing-kind-unknown');
    const odd = file('odd.json', JSON.stringify({ motion: { ...motion, jerk: 1 } }));
    expect(await runTime(svg, { machine: odd })).toBe(2);
    expect(errorCode()).toBe('file-key-unknown');
    for (const options of [{ speed: 'x' }, { speed: '0' }, { took: '5' }, { card: svg }]) {
      expect(await runTime(svg, options)).toBe(2);
      expect(errorCode()).toBe('command-misused');
    }
    const cardFile = file('card.json', writeCardFile(card));
    expect(await runTime(svg, { card: cardFile, took: 'soon' })).toBe(2);
    expect(errorCode()).toBe('command-misused');
  });
});
