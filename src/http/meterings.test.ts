import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleMetering, sampleTime } from '../../test/samples/studies.ts';
import { api } from '../wire/api.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const bare = { ratedCurrentMa: 19, readings: sampleMetering('m1').readings, waterC: 19 };
const body = { ...bare, id: 'm1', at: sampleTime };
const record = (over: Partial<typeof body> = {}) =>
  server.ask(api.recordMetering, { body: { ...body, ...over } });

/** The same readings, each so many per cent lower. */
const lowered = (byPct: number) =>
  body.readings.map(({ powerPct, currentMa }) => ({
    powerPct,
    currentMa: Number((currentMa * (1 - byPct / 100)).toFixed(2)),
  }));

describe('meterings', () => {
  it('are kept with what they say', async () => {
    const { metering, says } = await record();
    expect(metering).toEqual(sampleMetering('m1', { machineId: expect.any(String) as string }));
    expect(says).toMatchObject({ darkAtPct: 8, firesAtPct: 10, noise: { from: 'repeats' } });
    expect(says?.rated?.keepToPct).toBeGreaterThan(60);
    expect(says?.lines[0]?.ratedPct).toBeCloseTo((100 * (says?.lines[0]?.currentMa ?? 0)) / 19, 9);
    expect(await server.ask(api.getMetering, { params: { id: 'm1' } })).toEqual({ metering, says });
    expect(await server.ask(api.listMeterings)).toEqual({ meterings: [metering] });
  });

  it('are stored once however often they are sent, and get id and time where they have none', async () => {
    await record();
    await record();
    const { metering } = await server.ask(api.recordMetering, { body: bare });
    expect(metering.id).toMatch(/^made-/);
    expect(metering.at > sampleTime).toBe(true);
    const { meterings } = await server.ask(api.listMeterings);
    expect(meterings.map(({ id }) => id)).toEqual([metering.id, 'm1']);
    expect(await server.refusal(api.recordMetering, { body: { ...body, waterC: 25 } })).toEqual([
      409,
      'metering-id-taken',
    ]);
  });

  it('that make no curve are not kept', async () => {
    const readings = [{ powerPct: 30, currentMa: 0 }];
    expect(await server.refusal(api.recordMetering, { body: { ...body, readings } })).toEqual([
      422,
      'tube-readings-too-few',
    ]);
    const wild = [{ powerPct: 300, currentMa: 2 }];
    expect(await server.refusal(api.recordMetering, { body: { ...body, readings: wild } })).toEqual(
      [400, 'file-value-too-big'],
    );
    expect(await server.ask(api.listMeterings)).toEqual({ meterings: [] });
  });

  it('are held against one another: moved points at the supply, unmoved with weaker cuts at the light', async () => {
    await record();
    await record({ id: 'same', at: '2031-08-01T00:00:00.000Z' });
    await record({ id: 'less', at: '2031-09-01T00:00:00.000Z', readings: lowered(8) });
    const same = await server.ask(api.compareMeterings, {
      params: { id: 'same', before: 'm1' },
      query: { cuts: 'weaker' },
    });
    expect(same).toMatchObject({ how: 'same', at: 'light' });
    expect(same.suspects.map(({ name }) => name)).toContain('Tube');
    const less = await server.ask(api.compareMeterings, { params: { id: 'less', before: 'm1' } });
    expect(less).toMatchObject({ how: 'lower', at: 'current' });
    expect(less.levelPct).toBeCloseTo(92, 0);
    expect(less.message).toMatch(/8.{1,3}% less/);
    expect(
      await server.refusal(api.compareMeterings, { params: { id: 'less', before: 'gone' } }),
    ).toEqual([404, 'metering-not-found']);
  });

  it('are removed, and are gone then', async () => {
    await record();
    const asked = { params: { id: 'm1' } };
    expect(await server.ask(api.removeMetering, asked)).toEqual({ removed: true });
    expect(await server.refusal(api.removeMetering, asked)).toEqual([404, 'metering-not-found']);
    expect(await server.refusal(api.getMetering, asked)).toEqual([404, 'metering-not-found']);
  });
});
