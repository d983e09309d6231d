import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import {
  sampleCard,
  sampleEvent,
  sampleSetting,
  sampleTally,
  sampleTime,
} from '../../test/samples/studies.ts';
import { readersOf } from '../core/reading/readersOf.ts';
import { omit } from '../core/omit.ts';
import { openStore } from '../store/openStore.ts';
import { api, type ReplyOf } from '../wire/api.ts';
import { errorReply } from '../wire/problem.ts';
import { addressOf, type Route } from '../wire/route.ts';
import { scoreApi } from '../wire/score.ts';
import { trailApi } from '../wire/trailApi.ts';
import { openPairing, type Pairing } from './pairing.ts';

const host = '192.168.7.2:4870';
const params = { id: 's1' };
const setting = { powerPct: 34, speedMmPerS: 12, passes: 1 };

/** A device: where it asks from, and what it shows. */
interface Device {
  readonly remoteAddress: string;
  readonly cookie: string;
}
interface Asking {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string | number>>;
  readonly body?: unknown;
}

let folder: string;
let phones: Awaited<ReturnType<typeof openStore>>;
let pairing: Pairing;
let server: TestServer;
let bench: Device;
const desk = (name?: string): Device => ({
  remoteAddress: '127.0.0.1',
  cookie: name === undefined ? '' : `throughcut-name=${encodeURIComponent(name)}`,
});

const send = (device: Device, route: Route, asked: Asking = {}) =>
  server.app.inject({
    method: route.method,
    url: addressOf(route, asked.params, asked.query),
    remoteAddress: device.remoteAddress,
    headers: {
      host,
      cookie: device.cookie,
      ...(asked.body === undefined ? {} : { 'content-type': 'application/json' }),
    },
    ...(asked.body === undefined ? {} : { payload: JSON.stringify(asked.body) }),
  });
const ask = async <R extends Route>(
  device: Device,
  route: R,
  asked: Asking = {},
): Promise<ReplyOf<R>> => {
  const response = await send(device, route, asked);
  if (response.statusCode !== 200) throw new Error(`${route.path}: ${response.body}`);
  return route.reply?.parse(response.json()) as ReplyOf<R>;
};
const refusal = async (device: Device, route: Route, asked: Asking) => {
  const response = await send(device, route, asked);
  return [response.statusCode, errorReply.parse(response.json()).error] as const;
};
const letIn = async (name: string, remoteAddress: string): Promise<Device> => {
  const { code } = await pairing.open();
  const paired = await send({ remoteAddress, cookie: '' }, api.pair, { body: { code, name } });
  return { remoteAddress, cookie: String(paired.headers['set-cookie']).split(';')[0] ?? '' };
};
const study = async () => (await ask(desk(), api.getStudy, { params })).study;
const trail = async () => (await ask(desk(), trailApi.listSettingChanges)).changes;
const keep = (device: Device, over: object = {}) =>
  ask(device, api.keepSetting, {
    body: { id: 'b1', studyId: 's1', setting, rest: 'not-looked-at', ...over },
  });
const takeBack = (device: Device, changeId: string) =>
  ask(device, trailApi.takeBackSettingChange, { params: { changeId } });

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-people-'));
  phones = await openStore({ kind: 'file', file: join(folder, 'w.sqlite') }, sampleTime);
  const now = () => new Date().toISOString();
  pairing = openPairing({ kept: phones.phones, now, paused: () => undefined });
  server = await testServer({
    lan: { pairing, isOwnName: (name) => name === '192.168.7.2', addresses: () => [] },
  });
  bench = await letIn('bench\nphone', '192.168.7.30');
  const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3.1] };
  await ask(desk(), api.startStudy, { body: { ...params, stock } });
  await ask(desk(), api.addCard, { params, body: { card: sampleCard() } });
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
  await phones.close();
  rmSync(folder, { recursive: true, force: true });
});

const read = (device: Device, ...events: readonly ReturnType<typeof sampleEvent>[]) =>
  ask(device, api.recordReadings, { params, body: { events } });

describe('names', () => {
  it('stand on readings: a phone’s own, the one given at the desk, or none', async () => {
    await read(bench, sampleEvent('e1', { cell: 'A1' }), sampleEvent('e2', { cell: 'A2' }));
    await read(desk('Désirée'), sampleEvent('e3', { cell: 'B1', grade: 'stays' }));
    await read(desk(), sampleEvent('e4', { cell: 'B2', grade: 'stays' }));
    const { events } = await study();
    expect(events.map(({ id, by }) => [id, by])).toEqual([
      ['e1', 'bench phone'],
      ['e2', 'bench phone'],
      ['e3', 'Désirée'],
      ['e4', undefined],
    ]);
    expect(readersOf(events).map(({ by, shapes }) => [by, shapes])).toEqual([
      ['bench phone', 2],
      ['Désirée', 1],
      [undefined, 1],
    ]);
  });

  it('are not chosen by a phone: neither by what it sends nor by another cookie', async () => {
    const posing = { ...bench, cookie: `${bench.cookie}; throughcut-name=Ada` };
    await read(posing, { ...sampleEvent('e1', { cell: 'A1' }), by: 'Ada' });
    expect((await study()).events.map(({ by }) => by)).toEqual(['bench phone']);
  });

  it('stay as they were where another device sends the same once more', async () => {
    await read(bench, sampleEvent('e1', { cell: 'A1' }));
    expect(await read(desk('Ada'), sampleEvent('e1', { cell: 'A1' }))).toMatchObject({ stored: 0 });
    const body = { ...omit(sampleTally('t1'), 'by'), setting: sampleSetting };
    await ask(bench, api.recordTally, { params, body });
    const again = await ask(desk('Ada'), api.recordTally, { params, body });
    expect(again.tally.by).toBe('bench phone');
    expect((await study()).events.map(({ by }) => by)).toEqual(['bench phone']);
  });

  it('stand on counts, with who put one right', async () => {
    const body = { ...omit(sampleTally('t1'), 'by'), setting: sampleSetting };
    await ask(bench, api.recordTally, { params, body });
    const { out, hangs, stays, spoilt, partLengthMm } = body;
    const counts = { out: out + 1, hangs, stays, spoilt, partLengthMm };
    const correct = (device: Device) =>
      ask(device, api.correctTally, { params: { tallyId: 't1' }, body: counts });
    expect((await correct(bench)).tally).toMatchObject({ by: 'bench phone', out: out + 1 });
    expect('correctedBy' in (await correct(bench)).tally).toBe(false);
    const put = await correct(desk('Ada'));
    expect(put.tally).toMatchObject({ by: 'bench phone', correctedBy: 'Ada' });
  });

  it('go out in the export and come in again, and are left out of the counts that are given away', async () => {
    await read(bench, sampleEvent('e1'), sampleEvent('e3', { cell: 'B1', grade: 'stays' }));
    await keep(desk('Désirée'));
    const order = { id: 't1', out: 30, hangs: 0, stays: 0, spoilt: 0 };
    await ask(bench, api.tallyEntry, { params: { id: 'b1' }, body: order });
    const file = await ask(desk(), api.exportAll);
    expect(file.studies[0]?.events.map(({ by }) => by)).toEqual(['bench phone', 'bench phone']);
    expect([file.studies[0]?.tallies[0]?.by, file.book[0]?.by]).toEqual(['bench phone', 'Désirée']);
    const counts = await send(desk(), scoreApi.exportCounts);
    expect(counts.json()).toMatchObject({ sheets: [{ parts: 30, out: 30 }] });
    expect(counts.body).not.toMatch(/bench|Désirée/);
    const other = await testServer();
    await other.ask(api.importAll, { body: file });
    expect((await other.ask(api.exportAll)).studies).toEqual(file.studies);
    await other.close();
  });
});

describe('what was done to kept settings', () => {
  beforeEach(async () => {
    await read(bench, sampleEvent('e1'), sampleEvent('e3', { cell: 'B1', grade: 'stays' }));
    await keep(bench, { note: 'for the lamps' });
  });

  it('is told with who did it, and taken back with a tap by another', async () => {
    await ask(desk('Ada'), api.removeEntry, { params: { id: 'b1' } });
    const [removed, kept] = await trail();
    expect([removed?.change.by, kept?.change.by]).toEqual(['Ada', 'bench phone']);
    expect([removed?.mayTakeBack, kept?.mayTakeBack, kept?.isTakenBack]).toEqual([
      true,
      false,
      false,
    ]);
    const { change } = await takeBack(bench, removed?.change.id ?? '');
    expect(change).toMatchObject({ by: 'bench phone', undoes: removed?.change.id });
    expect((await takeBack(desk('Ada'), removed?.change.id ?? '')).change).toEqual(change);
    const { entry } = await ask(desk(), api.getEntry, { params: { id: 'b1' } });
    expect(entry).toMatchObject({ note: 'for the lamps', by: 'bench phone' });
    const lines = await trail();
    expect(lines.map(({ isTakenBack }) => isTakenBack)).toEqual([false, true, false]);
    const query = { settingId: 'elsewhere' };
    expect(await ask(desk(), trailApi.listSettingChanges, { query })).toEqual({
      changes: [],
      total: 0,
    });
  });

  it('stays where something stands on it, with a sentence', async () => {
    const [kept] = await trail();
    const counted = { id: 't1', out: 9, hangs: 1, stays: 0, spoilt: 0 };
    await ask(bench, api.tallyEntry, { params: { id: 'b1' }, body: counted });
    expect((await trail())[0]?.held?.message).toMatch(/1 counted order\.$/);
    const changeId = kept?.change.id ?? '';
    const [status, said] = await refusal(bench, trailApi.takeBackSettingChange, {
      params: { changeId },
    });
    expect([status, said.code]).toEqual([409, 'setting-built-on']);
    const params = { changeId: 'nothing' };
    const [none, unknown] = await refusal(bench, trailApi.takeBackSettingChange, { params });
    expect([none, unknown.code]).toEqual([404, 'setting-change-not-found']);
  });
});
