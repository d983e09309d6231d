import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleBedTest, sampleTime } from '../../test/samples/studies.ts';
import { api } from '../wire/api.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const { bed, setting, scatter, cells } = sampleBedTest('c1');
const body = { id: 'c1', at: sampleTime, bed, setting, scatter, cells };

describe('readings of the four corners', () => {
  it('are kept with what they say', async () => {
    const kept = await server.ask(api.recordBedTest, { body });
    expect(kept.test).toEqual(sampleBedTest('c1', { machineId: expect.any(String) as string }));
    const weakest = [...kept.places].sort((a, b) => b.chanceWeak - a.chanceWeak)[0];
    expect(weakest?.place).toBe('back-right');
    // Fisher: one of 4 out here, 12 of 12 elsewhere: C(4,3)/C(16,3) = 4/560.
    expect(weakest?.exactP).toBeCloseTo(4 / 560, 9);
    expect(kept.sentence).not.toBe('');
    expect(await server.ask(api.getBedTest, { params: { id: 'c1' } })).toEqual(kept);
    expect(await server.ask(api.listBedTests)).toEqual({ tests: [kept.test] });
  });

  it('are stored once, and not at all without a cell or as an example', async () => {
    await server.ask(api.recordBedTest, { body });
    await server.ask(api.recordBedTest, { body });
    const other = { ...body, setting: { ...setting, speedMmPerS: 18 } };
    expect(await server.refusal(api.recordBedTest, { body: other })).toEqual([
      409,
      'bed-test-id-taken',
    ]);
    const { statusCode } = await server.send(api.recordBedTest, {
      body: { ...body, id: 'c2', cells: [] },
    });
    expect(statusCode).toBe(400);
    const posing = await server.send(api.recordBedTest, {
      body: { ...body, id: 'c3', isExample: true },
    });
    expect(posing.statusCode).toBe(400);
    expect((await server.ask(api.listBedTests)).tests).toHaveLength(1);
  });

  it('of the example come and go with it, and are never exported', async () => {
    await server.ask(api.recordBedTest, { body });
    await server.ask(api.openExample);
    const bedTests = (await server.ask(api.listBedTests)).tests;
    expect(bedTests.map(({ isExample }) => isExample)).toContain(true);
    expect((await server.ask(api.listMeterings)).meterings).toHaveLength(2);
    expect(await server.ask(api.exportAll)).toMatchObject({
      meterings: [],
      bedTests: [{ id: 'c1' }],
    });
    await server.ask(api.removeExample);
    expect((await server.ask(api.listBedTests)).tests.map(({ id }) => id)).toEqual(['c1']);
    expect((await server.ask(api.listMeterings)).meterings).toEqual([]);
  });

  it('are removed, and are gone then', async () => {
    await server.ask(api.recordBedTest, { body });
    const asked = { params: { id: 'c1' } };
    expect(await server.ask(api.removeBedTest, asked)).toEqual({ removed: true });
    expect(await server.refusal(api.removeBedTest, asked)).toEqual([404, 'bed-test-not-found']);
    expect(await server.refusal(api.getBedTest, asked)).toEqual([404, 'bed-test-not-found']);
  });
});
