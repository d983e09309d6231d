import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleFocusTest, sampleMetering, sampleTime } from '../../test/samples/studies.ts';
import { undescribedMachine } from '../core/machine/machine.ts';
import { omit } from '../core/omit.ts';
import { api } from '../wire/api.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
});

const stock = { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
const start = (id: string, more: object = {}) =>
  server.ask(api.startStudy, { body: { id, stock, ...more } });
const get = (id: string) => server.ask(api.getStudy, { params: { id } });
const machines = async () => (await server.ask(api.listMachines)).machines;
const describeAs = (id: string, body: object) =>
  server.ask(api.describeMachine, { params: { id }, body });
const limited = { ...undescribedMachine, maxPowerPct: 62 };

describe('the machines of a workshop', () => {
  it('are none until a sheet is begun, which makes the one and only', async () => {
    expect(await machines()).toEqual([]);
    const { study } = await start('s1');
    expect(await machines()).toMatchObject([
      { id: study.machineId, isDefault: true, isExample: false, machine: undescribedMachine },
    ]);
    expect((await start('s2')).study.machineId).toBe(study.machineId);
  });

  it('are described once for all their sheets, whose revisions rise', async () => {
    const before = await start('s1');
    await start('s2');
    const { id } = await describeAs('default', { machine: limited });
    expect(before.study.machineId).toBe(id);
    for (const sheet of ['s1', 's2'])
      expect(await get(sheet)).toMatchObject({ study: { machine: limited }, revision: 2 });
    // Said again it is nothing new.
    await describeAs(id, { machine: limited });
    expect((await get('s1')).revision).toBe(2);
    // Through a sheet it is the same machine that is described.
    const params = { id: 's2' };
    await server.ask(api.changeStudy, { params, body: { machine: { ...limited, name: 'door' } } });
    expect((await get('s1')).study.machine).toEqual({ ...limited, name: 'door' });
    const list = await server.ask(api.listStudies);
    expect(list.studies.map(({ machine }) => machine)).toEqual(['door', 'door']);
  });

  it('are several: sheets stay with theirs, new ones are begun on the default', async () => {
    const first = (await start('s1')).study.machineId;
    await describeAs('other', { machine: { ...limited, name: 'window' }, addedAt: sampleTime });
    expect((await machines()).map(({ id, isDefault }) => [id, isDefault])).toEqual([
      [first, true],
      ['other', false],
    ]);
    await describeAs('other', { isDefault: true });
    expect((await start('s2')).study).toMatchObject({ machineId: 'other', machine: limited });
    expect((await get('s1')).study.machineId).toBe(first);
    expect((await start('s3', { machineId: first })).study.machineId).toBe(first);
    const params = { id: 's3' };
    const moved = await server.ask(api.changeStudy, { params, body: { machineId: 'other' } });
    expect(moved.study).toMatchObject({ machineId: 'other', machine: limited });
    expect(await server.refusal(api.startStudy, { body: { stock, machineId: 'none' } })).toEqual([
      404,
      'machine-not-found',
    ]);
  });

  it('are meant by a description that comes along: of the same name, or another', async () => {
    const door = { ...undescribedMachine, name: 'door' };
    const first = (await start('s1', { machine: door })).study.machineId;
    expect((await start('s2', { machine: { ...door, maxPowerPct: 70 } })).study).toMatchObject({
      machineId: first,
      machine: { maxPowerPct: 70 },
    });
    expect((await get('s1')).study.machine.maxPowerPct).toBe(70);
    const window = (await start('s3', { machine: { ...limited, name: 'window' } })).study.machineId;
    expect(window).not.toBe(first);
    expect((await start('s4', { machine: undescribedMachine })).study.machineId).toBe(first);
  });

  it('are removed when nothing is of them, and the next is the default', async () => {
    const first = (await start('s1')).study.machineId;
    await describeAs('other', { machine: limited });
    const refusal = await server.refusal(api.removeMachine, { params: { id: first } });
    expect(refusal).toEqual([409, 'machine-in-use']);
    await server.ask(api.removeStudy, { params: { id: 's1' } });
    await server.ask(api.removeMachine, { params: { id: first } });
    expect(await machines()).toMatchObject([{ id: 'other', isDefault: true }]);
  });

  it('name what was measured of them, by the name that they have now', async () => {
    const { id } = await describeAs('default', {
      machine: { ...undescribedMachine, name: 'door' },
    });
    const { metering } = await server.ask(api.recordMetering, {
      body: { readings: sampleMetering('m').readings, machine: 'Door ' },
    });
    expect(metering).toMatchObject({ machineId: id, machine: 'door' });
    await describeAs(id, { machine: { ...undescribedMachine, name: 'left' } });
    const { meterings } = await server.ask(api.listMeterings);
    expect(meterings.map(({ machineId, machine }) => [machineId, machine])).toEqual([[id, 'left']]);
  });
});

describe('something changed on a machine', () => {
  it('is noted once, known to its sheets, and taken back', async () => {
    const { machineId } = (await start('s1')).study;
    const params = { id: machineId };
    const body = { id: 'c1', at: '2020-02-03T00:00:00.000Z', what: 'lens' } as const;
    const noted = await server.ask(api.noteMachineChange, { params, body });
    expect(noted.changes).toEqual([body]);
    await server.ask(api.noteMachineChange, { params, body });
    expect((await get('s1')).study.machineChanges).toEqual([body]);
    expect((await get('s1')).revision).toBe(2);
    const other = { ...body, what: 'tube' };
    expect(await server.refusal(api.noteMachineChange, { params, body: other })).toEqual([
      409,
      'machine-change-id-taken',
    ]);
    const ahead = { what: 'lens', at: '2999-01-01T00:00:00.000Z' };
    expect(await server.refusal(api.noteMachineChange, { params, body: ahead })).toEqual([
      422,
      'machine-change-ahead',
    ]);
    await server.ask(api.removeMachineChange, { params: { ...params, changeId: 'c1' } });
    expect((await get('s1')).study.machineChanges).toEqual([]);
  });
});

describe('the example’s machine', () => {
  it('is nobody else’s, and leaves nothing behind', async () => {
    await server.ask(api.openExample);
    const [invented] = await machines();
    expect(invented).toMatchObject({ isExample: true, isDefault: false });
    const machineId = invented?.id ?? '';
    const own = (await start('s1')).study;
    expect(own.machine).toEqual(undescribedMachine);
    expect(own.machineId).not.toBe(machineId);
    for (const refusal of [
      await server.refusal(api.startStudy, { body: { id: 's2', stock, machineId } }),
      await server.refusal(api.changeStudy, { params: { id: 's1' }, body: { machineId } }),
      await server.refusal(api.describeMachine, {
        params: { id: machineId },
        body: { isDefault: true },
      }),
    ])
      expect(refusal).toEqual([422, 'machine-is-invented']);
    // What a visitor measures of it belongs to the example too.
    const test = omit(sampleFocusTest('f1'), 'version', 'id', 'at');
    await server.ask(api.recordFocusTest, { body: { ...test, machineId } });
    await server.ask(api.recordMetering, {
      body: { readings: sampleMetering('m').readings, machineId },
    });
    expect(await server.ask(api.exportAll)).toMatchObject({
      machines: [{ id: own.machineId }],
      meterings: [],
      focusTests: [],
    });
    await server.ask(api.removeExample);
    expect((await machines()).map((each) => each.id)).toEqual([own.machineId]);
    expect((await server.ask(api.listMeterings)).meterings).toEqual([]);
    expect((await server.ask(api.listFocusTests)).tests).toEqual([]);
  });
});
