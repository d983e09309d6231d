import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Card } from '../../src/core/card/card.ts';
import { plainDialect } from '../../src/core/dialect/gcodeDialect.ts';
import type { Machine } from '../../src/core/machine/machine.ts';
import { printer } from '../../src/cli/printer.ts';
import { api } from '../../src/wire/api.ts';
import { testServer, type TestServer } from '../samples/server.ts';

/** A card that was right when it was made, or came from elsewhere: every file of it is held to what is known now. */

const machine: Machine = { maxPowerPct: 70, speedRangeMmPerS: [1, 100] };
const stock = { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
const params = { id: 's1' };

let server: TestServer;
let card: Card;
beforeEach(async () => {
  server = await testServer({ printer });
  await server.ask(api.startStudy, { body: { id: 's1', stock, machine } });
  const trusted = { powerPct: 60, speedMmPerS: 20, passes: 1 };
  const request = { powerPct: 60, trusted, sheetMm: [200, 150] };
  ({ card } = await server.ask(api.addCard, { params, body: { request } }));
});
afterEach(() => server.close());

const kinds = ['svg', 'dxf', 'gcode', 'pdf', 'json'] as const;

/** What is said of each kind of file: the code of a refusal, or that it is given. */
const filesOf = async (code: string, of = params): Promise<readonly string[]> =>
  Promise.all(
    kinds.map(async (kind) => {
      const asked = { params: { ...of, code, kind } };
      const sent = await server.send(api.cardFile, asked);
      return sent.statusCode === 200
        ? 'given'
        : (await server.refusal(api.cardFile, asked)).join(' ');
    }),
  );
const allRefused = (code: string): readonly string[] => kinds.map(() => `422 ${code}`);

it('is given as it was made, so that what is refused below is refused for the change', async () => {
  expect(await filesOf(card.code)).toEqual(kinds.map(() => 'given'));
});

const tube = {
  ratedCurrentMa: 24,
  tubePoints: [
    { powerPct: 10, currentMa: 3 },
    { powerPct: 40, currentMa: 20 },
  ],
};

describe('what was told later', () => {
  it.each<readonly [what: string, Machine, code: string]>([
    ['a lower limit', { ...machine, maxPowerPct: 40 }, 'check-power-above-machine'],
    ['a rated current that it exceeds', { ...machine, ...tube }, 'check-overdrives'],
    ['a narrower range', { ...machine, speedRangeMmPerS: [40, 100] }, 'check-speed-beyond-machine'],
    ['a smaller bed', { ...machine, bed: { widthMm: 60, heightMm: 60 } }, 'check-outside-bed'],
  ])('of the machine, %s: no file', async (_, told, code) => {
    const { machineId } = (await server.ask(api.getStudy, { params })).study;
    const body = { addedAt: '2031-01-01T00:00:00Z', machine: told };
    await server.ask(api.describeMachine, { params: { id: machineId }, body });
    expect(await filesOf(card.code)).toEqual(allRefused(code));
  });

  it('of the machine, lines of its own that switch an output: no G-code', async () => {
    const { machineId } = (await server.ask(api.getStudy, { params })).study;
    const gcode = { ...plainDialect, opening: ['M62 P3'] };
    const body = { addedAt: '2031-01-01T00:00:00Z', machine: { ...machine, gcode } };
    await server.ask(api.describeMachine, { params: { id: machineId }, body });
    expect(await filesOf(card.code)).toEqual(
      kinds.map((kind) => (kind === 'gcode' ? '422 gcode-line-switches-output' : 'given')),
    );
  });

  it('of the sheet, a tenth of its thickness: no file', async () => {
    const body = { stock: { ...stock, nominalThicknessMm: 0.3 } };
    await server.ask(api.changeStudy, { params, body });
    expect(await filesOf(card.code)).toEqual(allRefused('check-above-energy-ceiling'));
  });

  it.each([
    ['PVC', 'material-refused'],
    ['Kunststoff', 'material-which-plastic'],
  ])(
    'of the sheet, that it is %s: refused there, and no file where it is stored',
    async (material, code) => {
      const body = { stock: { ...stock, material } };
      expect(await server.refusal(api.changeStudy, { params, body })).toEqual([422, code]);
      const { study } = await server.ask(api.getStudy, { params });
      await server.ports.store.change(async (session) => {
        await session.replaceHead(study.id, { ...study, stock: { ...stock, material } });
        return { ok: true, value: undefined };
      });
      expect(await filesOf(card.code)).toEqual(allRefused(code));
    },
  );
});

const withPower = (
  { rungs, ...rest }: Card,
  powerPct: number,
  change: Partial<Card> = {},
): Card => ({
  ...rest,
  rungs: rungs.map((rung) => ({ ...rung, setting: { ...rung.setting, powerPct } })),
  ...change,
});

/** Cards that nobody's request made. */
const brought: readonly (readonly [what: string, change: (card: Card) => Card, code: string])[] = [
  ['shapes above the limit', (one) => withPower(one, 95), 'check-power-above-machine'],
  [
    'shapes above the limit, named as overdrive',
    (one) => withPower(one, 95, { overdrive: true }),
    'check-power-above-machine',
  ],
  [
    'shapes above the limit, described by hand',
    (one) => withPower(one, 95, { origin: 'described' }),
    'check-power-above-machine',
  ],
  [
    'a scoring line at full power',
    (one) => ({ ...one, scoring: { powerPct: 100, speedMmPerS: 1, passes: 50 } }),
    'check-power-above-machine',
  ],
  [
    'a window and an outline at full power',
    (one) => ({ ...one, trusted: { powerPct: 95, speedMmPerS: 10, passes: 1 } }),
    'check-power-above-machine',
  ],
  [
    'a crawl, and a word of its own on what the sheet bears',
    (one) => ({
      ...one,
      believed: { powerPct: 60, v50MmPerS: 0.01 },
      rungs: one.rungs.map((rung) => ({
        ...rung,
        setting: { ...rung.setting, speedMmPerS: 1, passes: 20 },
      })),
    }),
    'check-above-energy-ceiling',
  ],
];

describe.each(brought)('a card with %s', (_, change, code) => {
  it('sent as it is: no file', async () => {
    const bad = { ...change(card), code: 'BADA' };
    const sent = await server.send(api.addCard, { params, body: { card: bad } });
    expect(sent.statusCode).toBe(200);
    expect(await filesOf('BADA')).toEqual(allRefused(code));
  });

  it('put in the place of a good one: no file', async () => {
    const at = { params: { ...params, code: card.code } };
    await server.send(api.replaceCard, { ...at, body: { card: change(card) } });
    expect(await filesOf(card.code)).toEqual(allRefused(code));
  });

  it('imported with a sheet: no file', async () => {
    const exported = await server.ask(api.exportAll);
    const studies = exported.studies.map((study) => ({
      ...study,
      id: 's2',
      cards: [{ ...change(card), code: 'BADB' }],
    }));
    await server.ask(api.importAll, { body: { ...exported, studies } });
    expect(await filesOf('BADB', { id: 's2' })).toEqual(allRefused(code));
  });
});
