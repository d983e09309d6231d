import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import { runCard } from '../../src/cli/card.ts';
import { printer } from '../../src/cli/printer.ts';
import { runCheck } from '../../src/cli/check.ts';
import { undescribedMachine } from '../../src/core/machine/machine.ts';
import { api } from '../../src/wire/api.ts';
import { checkApi } from '../../src/wire/checkApi.ts';
import { testServer } from '../samples/server.ts';

/** Files that say less than their words, or other than their card: not written, or found by the check. */

let folder = '';
let text = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-danger-'));
  text = '';
  vi.spyOn(process.stdout, 'write').mockImplementation((chunk) => {
    text += String(chunk);
    return true;
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

const request = (vary: 'corners' | 'speed', more: object = {}): object => ({
  ...more,
  version: 1,
  study: { version: 1, stock: { material: 'plywood', thicknessMm: 3 } },
  vary,
  powerPct: 34,
  sheetMm: [300, 200],
});

const made = async (vary: 'corners' | 'speed', more?: object): Promise<string> => {
  const file = join(folder, 'request.json');
  writeFileSync(file, JSON.stringify(request(vary, more)));
  expect(await runCard({ request: file, out: join(folder, 'out') })).toBe(0);
  return join(folder, 'out');
};

const printed = z.object({
  notWritten: z.array(z.object({ name: z.string(), code: z.string() })).optional(),
  findings: z.array(z.object({ code: z.string() })).optional(),
});
const said = () => printed.parse(JSON.parse(text));

/** Checks a file after it was changed, against its card; the unchanged one passes. */
const changed = async (
  out: string,
  name: string,
  change: (content: string) => string,
): Promise<{ readonly code: number; readonly codes: readonly string[] }> => {
  const card = join(out, 'card.json');
  expect(await runCheck(join(out, name), { card })).toBe(0);
  const content = readFileSync(join(out, name), 'utf8');
  const spoilt = change(content);
  expect(spoilt).not.toBe(content);
  writeFileSync(join(out, `spoilt-${name}`), spoilt);
  text = '';
  const code = await runCheck(join(out, `spoilt-${name}`), { card });
  return { code, codes: (said().findings ?? []).map((finding) => finding.code) };
};

/** A card's drawing in which two settings have each other's power in corners. */
const cornersExchanged = (content: string): string => {
  const least = [
    ...new Set(
      [...content.matchAll(/\b[A-F][ _][\d.]+mmps[ _]34pct[ _](corner\d+)/g)].flatMap(
        ([, corner = '']) => [corner],
      ),
    ),
  ];
  const [one = '', other = ''] = least;
  expect(other).toMatch(/^corner/);
  return content
    .replaceAll(`34pct_${one}`, '34pct_@')
    .replaceAll(`34pct ${one}`, '34pct @')
    .replaceAll(`34pct_${other}`, `34pct_${one}`)
    .replaceAll(`34pct ${other}`, `34pct ${one}`)
    .replaceAll('34pct_@', `34pct_${other}`)
    .replaceAll('34pct @', `34pct ${other}`);
};

/** A card's program with one shape at M4 among those at M3. */
const oneAtM4 = (content: string): string => {
  const cell = content.lastIndexOf('\n(');
  const at = content.indexOf('\nM3', cell);
  return `${content.slice(0, at)}\nM4${content.slice(at + 3)}`;
};

describe('at the command line', () => {
  it('no G-code is written of a card whose powers in corners it cannot carry, and the reason is', async () => {
    const out = await made('corners');
    expect(readdirSync(out).sort()).toEqual(['card.dxf', 'card.json', 'card.pdf', 'card.svg']);
    expect(said().notWritten).toEqual([
      expect.objectContaining({ name: 'card.gcode', code: 'gcode-corner-power-not-carried' }),
    ]);
  });

  it.each(['card.svg', 'card.dxf'])(
    'the powers in corners of two settings, exchanged in %s',
    async (name) => {
      const out = await made('corners');
      const { code, codes } = await changed(out, name, cornersExchanged);
      expect(code).toBe(1);
      expect(codes.length).toBeGreaterThan(0);
    },
  );

  it.each([
    [{ opening: ['G21', 'M64 P0'] }, 'gcode-line-switches-output'],
    [{ closing: ['M106 S255'] }, 'gcode-line-switches-output'],
    [{ opening: ['$30=255'] }, 'gcode-line-sets-controller'],
    [{ opening: ['M[1+2] S1000'] }, 'gcode-line-hides-words'],
  ])(
    'no G-code is written with lines of one’s own like %j, and drawings are',
    async (gcode, code) => {
      const out = await made('speed', { gcode });
      expect(readdirSync(out).sort()).toEqual(['card.dxf', 'card.json', 'card.pdf', 'card.svg']);
      expect(said().notWritten).toEqual([expect.objectContaining({ name: 'card.gcode', code })]);
    },
  );

  it('one shape at M4 among those at M3', async () => {
    const out = await made('speed');
    const { code, codes } = await changed(out, 'card.gcode', oneAtM4);
    expect(code).toBe(1);
    expect(codes.length).toBeGreaterThan(0);
  });
});

describe('through HTTP', () => {
  it('no G-code is given of a card whose powers in corners it cannot carry; drawings are', async () => {
    const server = await testServer({ printer });
    try {
      await server.ask(api.startStudy, {
        body: {
          id: 's1',
          stock: { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] },
          machine: undescribedMachine,
        },
      });
      const params = { id: 's1' };
      const { card } = await server.ask(api.addCard, {
        params,
        body: { request: { vary: 'corners', powerPct: 34, sheetMm: [300, 200] } },
      });
      const file = (kind: 'svg' | 'dxf' | 'gcode') =>
        server.send(api.cardFile, { params: { ...params, code: card.code, kind } });
      expect((await file('svg')).statusCode).toBe(200);
      expect((await file('dxf')).statusCode).toBe(200);
      const refused = await file('gcode');
      expect(refused.statusCode).toBe(422);
      expect(refused.body).toContain('gcode-corner-power-not-carried');
    } finally {
      await server.close();
    }
  });

  const asked = async (body: object) => {
    const server = await testServer();
    try {
      return await server.send(checkApi.checkFile, { body });
    } finally {
      await server.close();
    }
  };
  const verdict = z.object({
    ok: z.boolean(),
    findings: z.array(z.object({ severity: z.string(), code: z.string() })),
  });

  it.each([
    ['corners', 'card.svg', cornersExchanged],
    ['corners', 'card.dxf', cornersExchanged],
    ['speed', 'card.gcode', oneAtM4],
  ] as const)(
    'the check finds of a card by %s what was changed in %s',
    async (vary, name, spoil) => {
      const out = await made(vary);
      const content = readFileSync(join(out, name), 'utf8');
      const card: unknown = JSON.parse(readFileSync(join(out, 'card.json'), 'utf8'));
      const whole = verdict.parse((await asked({ text: content, card })).json());
      expect(whole.ok).toBe(true);
      const spoilt = spoil(content);
      expect(spoilt).not.toBe(content);
      const found = verdict.parse((await asked({ text: spoilt, card })).json());
      expect(found.ok).toBe(false);
      // The command line says the same.
      expect(found.findings.map(({ code }) => code)).toEqual(
        (await changed(out, name, spoil)).codes,
      );
    },
  );

  it('the check holds a file to the machine, and refuses what it cannot read', async () => {
    const out = await made('speed');
    const text = readFileSync(join(out, 'card.svg'), 'utf8');
    const kept = await asked({ text, machine: { maxPowerPct: 20, speedRangeMmPerS: [1, 100] } });
    expect(verdict.parse(kept.json()).ok).toBe(false);
    for (const body of [
      { text: 'no drawing' },
      { text, card: { version: 1 } },
      { text, machine: { maxPowerPct: 400 } },
    ]) {
      const refused = await asked(body);
      expect(refused.statusCode).toBeGreaterThanOrEqual(400);
      expect(refused.statusCode).toBeLessThan(500);
    }
  });
});
