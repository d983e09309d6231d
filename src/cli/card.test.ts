import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';

import { parseCardFile } from '../formats/cardFile.ts';
import { runCard } from './card.ts';
import { runCheck } from './check.ts';
import { runTrial } from './trial.ts';

let folder = '';
let printed = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-card-'));
  printed = '';
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    printed += String(text);
    return true;
  });
});
afterEach(() => vi.restoreAllMocks());

const request = {
  version: 1,
  study: {
    version: 1,
    machine: { maxPowerPct: 80, speedRangeMmPerS: [1, 100] },
    stock: { material: 'plywood', thicknessMm: 3.1 },
  },
  vary: 'speed',
  powerPct: 34,
  settingsAtMost: 6,
  cellsEach: 2,
  shape: 'star',
  sizeMm: 14,
  sheetMm: [120, 90],
  seed: 1,
};
const ask = (change: object = {}): Promise<number> => {
  const file = join(folder, 'request.json');
  writeFileSync(file, JSON.stringify({ ...request, ...change }));
  return runCard({ request: file, out: join(folder, 'out') });
};
const errorCode = (): string =>
  z
    .object({ error: z.object({ code: z.string(), remedy: z.string().min(5) }) })
    .parse(JSON.parse(printed)).error.code;
const made = (name: string): string => readFileSync(join(folder, 'out', name), 'utf8');

describe('card --request --out', () => {
  it('writes five files that pass their own check, and tells what they hold', async () => {
    expect(await ask()).toBe(0);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual([
      'card.dxf',
      'card.gcode',
      'card.json',
      'card.pdf',
      'card.svg',
    ]);
    expect(JSON.parse(printed)).toMatchObject({ version: 1, settings: 6, cells: 12 });
    const card = join(folder, 'out', 'card.json');
    for (const kind of ['svg', 'dxf', 'gcode']) {
      expect(await runCheck(join(folder, 'out', `card.${kind}`), { card })).toBe(0);
    }
    expect(made('card.pdf').startsWith('%PDF-')).toBe(true);
  });

  it('takes rungs outright: cell for cell what was asked for', async () => {
    const rungs = [
      { powerPct: 34, speedMmPerS: 12 },
      { powerPct: 34, speedMmPerS: 16.5 },
      { powerPct: 34, speedMmPerS: 21 },
    ];
    expect(await ask({ rungs, cellsEach: 3 })).toBe(0);
    const card = parseCardFile(made('card.json'));
    if (!card.ok) throw new Error(card.problem.code);
    const speeds = card.value.rungs.map(({ setting }) => setting.speedMmPerS).sort((a, b) => a - b);
    expect(speeds).toEqual([12, 16.5, 21]);
    expect(card.value.cells).toHaveLength(9);
  });

  it('writes no G-code of a card that varies the power in corners, which RS-274 has no word for, and takes an old one away', async () => {
    expect(await ask()).toBe(0);
    expect(readdirSync(join(folder, 'out'))).toContain('card.gcode');
    printed = '';
    expect(await ask({ vary: 'corners', sheetMm: [200, 120] })).toBe(0);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual([
      'card.dxf',
      'card.json',
      'card.pdf',
      'card.svg',
    ]);
    const { files, notWritten } = z
      .object({
        files: z.array(z.string()),
        notWritten: z.array(z.object({ name: z.string(), code: z.string(), message: z.string() })),
      })
      .parse(JSON.parse(printed));
    expect(files).toHaveLength(4);
    expect(notWritten).toMatchObject([
      { name: 'card.gcode', code: 'gcode-corner-power-not-carried' },
    ]);
    expect(notWritten[0]?.message).toContain('corner power');
    const card = join(folder, 'out', 'card.json');
    for (const kind of ['svg', 'dxf'])
      expect(await runCheck(join(folder, 'out', `card.${kind}`), { card })).toBe(0);
  });

  it('gives the same drawings for the same request, others for another seed', async () => {
    await ask();
    const first = [made('card.json'), made('card.svg'), made('card.gcode'), made('card.dxf')];
    await ask();
    expect([made('card.json'), made('card.svg'), made('card.gcode'), made('card.dxf')]).toEqual(
      first,
    );
    await ask({ seed: 2 });
    expect(made('card.json')).not.toBe(first[0]);
  });

  it('stops at a refused material, a slip in the request and what cannot be, and writes nothing', async () => {
    const pvc = { ...request.study, stock: { material: 'PVC foam board', thicknessMm: 3 } };
    for (const [change, code] of [
      [{ study: pvc }, 'material-refused'],
      [{ vary: 'corners', shape: 'circle' }, 'card-corners-need-corners'],
      [{ sheetMm: [40, 30] }, 'card-bigger-than-sheet'],
      [{ powerPct: 95 }, 'card-power-above-machine'],
      [{ sede: 1 }, 'file-key-unknown'],
      [{ version: 2 }, 'file-version-unknown'],
    ] as const) {
      printed = '';
      expect(await ask(change)).toBe(2);
      expect(errorCode()).toBe(code);
    }
    expect(readdirSync(folder)).toEqual(['request.json']);
  });
});

describe('check FILE', () => {
  it('ends with 1 and names the cell where label and setting differ', async () => {
    await ask();
    const gcode = made('card.gcode');
    const at = gcode.indexOf('(D1 ');
    writeFileSync(
      join(folder, 'slip.gcode'),
      gcode.slice(0, at) + gcode.slice(at).replace(/F[\d.]+/, 'F99'),
    );
    printed = '';
    expect(
      await runCheck(join(folder, 'slip.gcode'), { card: join(folder, 'out', 'card.json') }),
    ).toBe(1);
    const report = z
      .object({
        findings: z.array(
          z.object({ code: z.string(), cell: z.string().optional(), message: z.string() }),
        ),
      })
      .parse(JSON.parse(printed));
    expect(report.findings).toContainEqual(
      expect.objectContaining({ code: 'check-cell-differs', cell: 'D1' }),
    );
    expect(report.findings[0]?.message).toContain('D1');
  });

  it('takes the scale of S and the limits from a machine file', async () => {
    writeFileSync(join(folder, 'any.gcode'), 'G21 G90\nM4 S255\nG1 X9 F600\nM5\nM2');
    writeFileSync(
      join(folder, 'machine.json'),
      JSON.stringify({ maxPowerPct: 80, sAtFullPower: 255 }),
    );
    expect(await runCheck(join(folder, 'any.gcode'), {})).toBe(0);
    expect(
      await runCheck(join(folder, 'any.gcode'), { machine: join(folder, 'machine.json') }),
    ).toBe(1);
  });

  it('ends with 2 where there is nothing to check', async () => {
    expect(await runCheck(join(folder, 'nowhere.svg'), {})).toBe(2);
    writeFileSync(join(folder, 'words.txt'), 'hello');
    printed = '';
    expect(await runCheck(join(folder, 'words.txt'), {})).toBe(2);
    expect(errorCode()).toBe('drawing-kind-unknown');
  });
});

describe('trial --out', () => {
  it('writes a drawing with as many colours as it says strips', async () => {
    expect(await runTrial({ out: join(folder, 'out') })).toBe(0);
    const { strips } = z.object({ strips: z.number() }).parse(JSON.parse(printed));
    const colours = new Set(
      [...made('colour-trial.svg').matchAll(/stroke="(#\w+)"/g)].map(([, c]) => c),
    );
    expect(colours.size).toBe(strips);
  });
});
