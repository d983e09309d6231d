import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleCard, sampleSetting, sampleStudy } from '../../test/samples/studies.ts';
import { checkToolpath } from '../core/filecheck/checkToolpath.ts';
import { plainDialect } from '../core/dialect/gcodeDialect.ts';
import { undescribedMachine } from '../core/machine/machine.ts';
import { readToolpath } from '../formats/readToolpath.ts';
import { api } from '../wire/api.ts';
import { printer } from './printer.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer({ printer });
  const { stock } = sampleStudy('s1');
  await server.ask(api.startStudy, { body: { id: 's1', stock } });
  await server.ask(api.addCard, { params, body: { card } });
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const params = { id: 's1' };
const card = sampleCard('K7QX', { scoring: { ...sampleSetting, powerPct: 12, speedMmPerS: 90 } });
const machine = {
  ...undescribedMachine,
  gcode: {
    opening: ['G54'],
    closing: ['G0 X5 Y5', 'M30'],
    sAtFullPower: 255,
    power: 'speed-following',
    airOn: 'M7',
  },
} as const;
const gcode = async (): Promise<string> =>
  (await server.send(api.cardFile, { params: { ...params, code: 'K7QX', kind: 'gcode' } })).body;

describe('a card’s G-code from the server', () => {
  it('is plain for a machine that said nothing of it', async () => {
    const text = await gcode();
    expect(text).toContain('(S1000 is 100 pct)');
    expect(text).toMatch(/ F840 S340\n/); // 14 mm/s, 34 %
    expect(text.trimEnd().endsWith(plainDialect.closing.join('\n'))).toBe(true);
  });

  it('speaks as the study’s machine does', async () => {
    await server.ask(api.changeStudy, { params, body: { machine } });
    const text = await gcode();
    expect(text).toContain('(S255 is 100 pct)');
    expect(text).toMatch(/ F840 S86\.7\n/); // 34 % of 255
    expect(text).toMatch(/\nG54\nM5\n/);
    expect(text).toMatch(/\nM4 S0\n/);
    expect(text).not.toMatch(/\nM3 /);
    expect(text.endsWith('\nG0 X5 Y5\nM30\n')).toBe(true);
    const path = readToolpath(text);
    expect(path.ok && checkToolpath(path.value, { card, machine }).findings).toEqual(
      path.ok && checkToolpath(path.value, { card }).findings,
    );
  });

  it('is refused, with the reason, where a rung has less power in corners', async () => {
    const [first, ...rest] = card.rungs;
    if (first === undefined) throw new Error('no rung');
    const corners = {
      ...card,
      code: 'K7QC',
      // Its longer words need more room.
      ...{ widthMm: 140, heightMm: 40 },
      cells: card.cells.map((cell, i) => ({ ...cell, xMm: 20 + 30 * i, yMm: 22 })),
      rungs: [{ ...first, setting: { ...first.setting, minPowerPct: 9 } }, ...rest],
    };
    await server.ask(api.addCard, { params, body: { card: corners } });
    const asked = (kind: 'gcode' | 'svg' | 'dxf') =>
      server.send(api.cardFile, { params: { ...params, code: 'K7QC', kind } });
    const refused = await asked('gcode');
    expect(refused.statusCode).toBe(422);
    expect(refused.json()).toMatchObject({ error: { code: 'gcode-corner-power-not-carried' } });
    expect((await asked('svg')).statusCode).toBe(200);
    expect((await asked('dxf')).statusCode).toBe(200);
  });

  it('takes no line of one’s own that lights the beam', async () => {
    const body = { machine: { ...machine, gcode: { ...machine.gcode, opening: ['M3 S255'] } } };
    expect(await server.refusal(api.changeStudy, { params, body })).toEqual([
      400,
      'file-value-refused',
    ]);
    expect(await gcode()).toContain('(S1000 is 100 pct)');
  });
});
