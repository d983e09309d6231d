import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { printer } from '../../src/cli/printer.ts';
import type { Machine } from '../../src/core/machine/machine.ts';
import { plainDialect } from '../../src/core/dialect/gcodeDialect.ts';
import { api } from '../../src/wire/api.ts';
import { kerfApi } from '../../src/wire/kerfApi.ts';
import { orderApi } from '../../src/wire/order.ts';
import { watchApi } from '../../src/wire/watch.ts';
import { testServer, type TestServer } from '../samples/server.ts';
import { sampleOrder } from '../samples/studies.ts';
import { omit } from '../../src/core/omit.ts';

/** A sheet was cut and read, a setting kept, an order begun; then the machine was told to be weaker than it was thought to be. */

const machine: Machine = { maxPowerPct: 80, speedRangeMmPerS: [1, 100] };
const stock = { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
const setting = { powerPct: 60, speedMmPerS: 12, passes: 1 };
const params = { id: 's1' };

let server: TestServer;
let machineId = '';
beforeEach(async () => {
  server = await testServer({ printer });
  await server.ask(api.startStudy, { body: { id: 's1', stock, machine } });
  machineId = (await server.ask(api.getStudy, { params })).study.machineId;
  const counts = { out: 200, hangs: 0, stays: 0, spoilt: 0, partLengthMm: 60 };
  await server.ask(api.recordTally, { params, body: { id: 't1', setting, ...counts } });
  const fast = { ...setting, speedMmPerS: 30 };
  const lost = { out: 2, hangs: 0, stays: 30, spoilt: 0, partLengthMm: 60 };
  await server.ask(api.recordTally, { params, body: { id: 't2', setting: fast, ...lost } });
  await server.ask(orderApi.keepOrder, {
    params: { id: 's1', orderId: 'o1' },
    body: omit(sampleOrder('o1', { powerPct: 60, parts: 90 }), 'id'),
  });
  await server.ask(api.keepSetting, { body: { id: 'k1', studyId: 's1', setting } });
});
afterEach(() => server.close());

const tell = (told: Machine) =>
  server.ask(api.describeMachine, {
    params: { id: machineId },
    body: { addedAt: '2031-01-01T00:00:00Z', machine: told },
  });

const weaker: readonly (readonly [what: string, told: Machine, mostPct: number])[] = [
  ['a lower limit', { ...machine, maxPowerPct: 40 }, 40],
  [
    'a rated current',
    {
      ...machine,
      ratedCurrentMa: 24,
      tubePoints: [
        { powerPct: 10, currentMa: 3 },
        { powerPct: 50, currentMa: 24 },
      ],
    },
    50,
  ],
];

const anySetting = z.looseObject({ powerPct: z.number(), speedMmPerS: z.number() });

describe.each(weaker)('after %s', (_, told, mostPct) => {
  beforeEach(() => tell(told));

  it('an answer stays below it, or there is none', async () => {
    const { recommended } = await server.ask(api.answerStudy, { params });
    expect(recommended === null || recommended.powerPct <= mostPct).toBe(true);
  });

  it('a next card stays below it', async () => {
    const { cells } = await server.ask(api.proposeNextCard, { params });
    expect(cells.filter(({ powerPct }) => powerPct > mostPct)).toEqual([]);
  });

  it('the order that was begun goes on below it, or is refused', async () => {
    const sent = await server.send(orderApi.planStartedOrder, {
      params: { id: 's1', orderId: 'o1' },
    });
    if (sent.statusCode !== 200) {
      expect(sent.statusCode).toBe(422);
      return;
    }
    const { next } = orderApi.planStartedOrder.reply.parse(sent.json());
    const proposed = next.act === 'sheet' ? next.settings : next.act === 'card' ? next.cells : [];
    expect(proposed.filter(({ powerPct }) => powerPct > mostPct)).toEqual([]);
  });

  it('a comb card and a ramp of the old setting are refused', async () => {
    const { powerPct, speedMmPerS } = setting;
    const query = { material: 'plywood', thicknessMm: 3, powerPct, speedMmPerS };
    for (const kind of ['svg', 'dxf', 'gcode', 'pdf']) {
      for (const card of ['comb', 'slots']) {
        const asked = { params: { kind }, query: { card, ...query } };
        expect((await server.refusal(kerfApi.kerfCardFile, asked))[1]).toMatch(/^fires-above-/);
      }
      const ramp = { lengthMm: 120, blockMm: 8, nozzleGapMm: 12, powerPct, speedMmPerS: 100 };
      const asked = { params: { kind }, query: { material: 'plywood', ...ramp, studyId: 's1' } };
      expect((await server.refusal(api.rampFile, asked))[1]).toMatch(
        /^(fires-above-rated|ramp-setting-out-of-range)$/,
      );
    }
  });

  it('what was kept names no setting to run above it', async () => {
    const { standing } = await server.ask(api.getEntry, { params: { id: 'k1' } });
    expect(standing.run?.powerPct ?? 0).toBeLessThanOrEqual(mostPct);
    expect(standing.kind).not.toBe('holds');
    const { study } = await server.ask(api.getStudy, { params });
    expect(study.id).toBe('s1');
  });

  it('no check strip is cut of what was kept', async () => {
    const asked = { params: { id: 'k1' }, body: { of: 'reference' } };
    expect((await server.refusal(watchApi.cutStrip, asked))[1]).toMatch(/fires-above|overdrive/);
  });

  it('the old setting is not kept again without a word', async () => {
    const body = { id: 'k2', studyId: 's1', setting };
    expect((await server.refusal(api.keepSetting, { body }))[1]).toMatch(
      /^(power-above-machine|overdrive-needs-reason)$/,
    );
  });
});

it('an import of the workshop as it was does not raise a limit that was lowered since', async () => {
  const before = await server.ask(api.exportAll);
  await tell({ ...machine, maxPowerPct: 40 });
  await server.send(api.importAll, { body: before });
  const { study } = await server.ask(api.getStudy, { params });
  expect(study.machine.maxPowerPct).toBe(40);
});

it('lines of the machine’s own that switch an output keep G-code of combs and ramps back, drawings not', async () => {
  await tell({ ...machine, gcode: { ...plainDialect, opening: ['M62 P3'] } });
  const query = { material: 'plywood', thicknessMm: 3, powerPct: 34, speedMmPerS: 14 };
  const comb = (kind: string) =>
    server.send(kerfApi.kerfCardFile, { params: { kind }, query: { card: 'comb', ...query } });
  expect((await comb('svg')).statusCode).toBe(200);
  const refused = await comb('gcode');
  expect([refused.statusCode, refused.body]).toEqual([
    422,
    expect.stringContaining('gcode-line-switches-output'),
  ]);
  const ramp = { lengthMm: 120, blockMm: 8, nozzleGapMm: 12, powerPct: 14, speedMmPerS: 100 };
  const asked = {
    params: { kind: 'gcode' },
    query: { material: 'plywood', ...ramp, studyId: 's1' },
  };
  expect(await server.refusal(api.rampFile, asked)).toEqual([422, 'gcode-line-switches-output']);
});

it('a setting that is kept above the limit by an import is not said to hold', async () => {
  const exported = await server.ask(api.exportAll);
  const book = exported.book.map((entry) => ({
    ...entry,
    id: 'k9',
    code: 'BADK',
    setting: { ...entry.setting, powerPct: 95 },
  }));
  const other = await testServer();
  try {
    await other.ask(api.importAll, { body: { ...exported, book } });
    const { standing } = await other.ask(api.getEntry, { params: { id: 'k9' } });
    expect(anySetting.optional().parse(standing.run)?.powerPct ?? 0).toBeLessThanOrEqual(80);
    expect(standing.kind).not.toBe('holds');
  } finally {
    await other.close();
  }
});
