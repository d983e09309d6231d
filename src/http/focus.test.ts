import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleFocusTest, sampleStudy, sampleTime } from '../../test/samples/studies.ts';
import { undescribedMachine } from '../core/machine/machine.ts';
import { api } from '../wire/api.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const { ramp, readings } = sampleFocusTest('f1');
const body = { id: 'f1', at: sampleTime, ramp, readings, gaugeMm: 7.5 };

describe('focus tests', () => {
  it('are kept with what they found', async () => {
    const { test, found } = await server.ask(api.recordFocusTest, { body });
    expect(test).toEqual(sampleFocusTest('f1', { machineId: expect.any(String) as string }));
    expect(found?.gapMm.value).toBeCloseTo(7.4, 9);
    expect(found?.gauge).toMatchObject({ verdict: 'fits' });
    expect(found?.remarks.map(({ code }) => code)).toEqual(['focus-depth-unknown']);
    expect(await server.ask(api.getFocusTest, { params: { id: 'f1' } })).toEqual({ test, found });
    expect(await server.ask(api.listFocusTests)).toEqual({ tests: [test] });
  });

  it('tell the depth and the thickness that one height serves, from widths', async () => {
    const widths = Array.from({ length: 12 }, (_, i) => {
      const alongMm = 10 + 9 * i;
      const away = (alongMm - 69) / 15;
      return { alongMm, widthMm: (0.16 + 0.004 * (i % 2)) * Math.hypot(1, away) };
    });
    const readings = { kind: 'widths', widths };
    const { found } = await server.ask(api.recordFocusTest, { body: { ...body, readings } });
    expect(found?.gapMm.value).toBeCloseTo(7.4, 1);
    expect(found?.depthMm?.value).toBeCloseTo(2, 0);
    expect(found?.servedThicknessMm).toBeLessThan(found?.depthMm?.low ?? 0);
    expect(found?.remarks).toEqual([]);
  });

  it('are stored once, and not at all where the ramp missed the focus or may not be used', async () => {
    await server.ask(api.recordFocusTest, { body });
    await server.ask(api.recordFocusTest, { body });
    expect(await server.refusal(api.recordFocusTest, { body: { ...body, gaugeMm: 6 } })).toEqual([
      409,
      'focus-test-id-taken',
    ]);
    const missed = { kind: 'fades', lines: [{ fromMm: 80, toMm: null }] };
    expect(
      await server.refusal(api.recordFocusTest, { body: { ...body, id: 'f2', readings: missed } }),
    ).toEqual([422, 'focus-beyond-high-end']);
    const high = { ...body, id: 'f3', ramp: { ...ramp, blockMm: 10 } };
    expect(await server.refusal(api.recordFocusTest, { body: high })).toEqual([
      422,
      'ramp-meets-nozzle',
    ]);
    expect((await server.ask(api.listFocusTests)).tests).toHaveLength(1);
  });

  it('are removed, and are gone then', async () => {
    await server.ask(api.recordFocusTest, { body });
    const asked = { params: { id: 'f1' } };
    expect(await server.ask(api.removeFocusTest, asked)).toEqual({ removed: true });
    expect(await server.refusal(api.removeFocusTest, asked)).toEqual([404, 'focus-test-not-found']);
    expect(await server.refusal(api.getFocusTest, asked)).toEqual([404, 'focus-test-not-found']);
  });
});

describe('a focus ramp as a file', () => {
  const query = { material: 'birch plywood', ...ramp, powerPct: 14, speedMmPerS: 30 };
  const asked = (over: Partial<Record<keyof typeof query | 'studyId', string | number>> = {}) => ({
    params: { kind: 'svg' },
    query: { ...query, ...over },
  });

  it('is drawn', async () => {
    const reply = await server.send(api.rampFile, asked());
    expect(reply.statusCode).toBe(200);
    expect(reply.body).toContain('Focus ramp');
    expect(reply.headers['content-disposition']).toContain('focus-ramp.svg');
  });

  it('is refused where the nozzle would be met, of a refused material, and past the machine’s limits', async () => {
    expect(await server.refusal(api.rampFile, asked({ blockMm: 9.5 }))).toEqual([
      422,
      'ramp-meets-nozzle',
    ]);
    expect(await server.refusal(api.rampFile, asked({ material: 'PVC' }))).toEqual([
      422,
      'material-refused',
    ]);
    expect(await server.refusal(api.rampFile, asked({ lengthMm: 'long' }))).toEqual([
      400,
      'file-value-wrong-type',
    ]);
    const { id, createdAt, stock } = sampleStudy('s1');
    await server.ask(api.startStudy, {
      body: { id, createdAt, stock, machine: { ...undescribedMachine, maxPowerPct: 10 } },
    });
    expect(await server.refusal(api.rampFile, asked({ studyId: 's1' }))).toEqual([
      422,
      'ramp-setting-out-of-range',
    ]);
  });
});
