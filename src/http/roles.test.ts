import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { sampleTime } from '../../test/samples/studies.ts';
import { roles, type Role } from '../core/role.ts';
import { openStore } from '../store/openStore.ts';
import { allRoutes } from '../wire/allRoutes.ts';
import { api } from '../wire/api.ts';
import { pairingReply, pairReply } from '../wire/pairing.ts';
import { errorReply } from '../wire/problem.ts';
import { addressOf, type Route } from '../wire/route.ts';
import { openPairing, type Pairing } from './pairing.ts';

const host = '192.168.7.2:4870';

/** What changes nothing that stands, or is for each who is let in: said here once more, by hand. */
const forAllLetIn = [
  ...['putOnBed', 'recordReadings', 'recordTally', 'correctTally', 'tallyEntry', 'keepPhoto'],
  'noteCard',
  ...['calcFit', 'calcNextCard', 'calcPlan', 'calcKerf', 'growDrawing', 'calcMarks', 'calcShades'],
  ...['checkFile', 'compareConditions', 'calcCompare'],
];
const forWhoRunsThePlace = [
  ...['describeMachine', 'removeMachine', 'importAll'],
  ...['openPairing', 'changePhone', 'removePhone'],
];
const forAnyone = ['health', 'pairing', 'pair'];

const mayCall = (role: Role | undefined, name: string, { method }: Route): boolean => {
  if (forAnyone.includes(name)) return true;
  if (role === undefined) return false;
  if (forWhoRunsThePlace.includes(name)) return role === 'runs-the-place';
  return method === 'GET' || forAllLetIn.includes(name) || role !== 'reads-and-counts';
};

let folder: string;
let store: Awaited<ReturnType<typeof openStore>>;
let server: TestServer;
let pairing: Pairing;
let addresses = 0;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-roles-'));
  store = await openStore({ kind: 'file', file: join(folder, 'w.sqlite') }, sampleTime);
  const now = () => new Date().toISOString();
  pairing = openPairing({ kept: store.phones, now, paused: () => undefined });
  server = await testServer({
    lan: { pairing, isOwnName: (name) => name === '192.168.7.2', addresses: () => [] },
  });
});
afterEach(async () => {
  expect(server.reported).toEqual([]);
  await server.close();
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Device {
  readonly remoteAddress: string;
  readonly cookie: string;
}
const desk: Device = { remoteAddress: '127.0.0.1', cookie: '' };
const stranger: Device = { remoteAddress: '192.168.7.99', cookie: '' };

interface Asking {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string>>;
  readonly body?: unknown;
}
const send = (
  { remoteAddress, cookie }: Device,
  { method, path, takes }: Route,
  { params = {}, query, body = {} }: Asking = {},
) =>
  server.app.inject({
    method,
    url: addressOf({ path }, params, query),
    remoteAddress,
    headers: {
      host,
      cookie,
      ...(method === 'GET' || method === 'DELETE'
        ? {}
        : { 'content-type': takes?.[0] ?? 'application/json' }),
    },
    ...(method === 'GET' || method === 'DELETE'
      ? {}
      : { payload: takes === undefined ? JSON.stringify(body) : 'no picture' }),
  });
type Answer = Awaited<ReturnType<typeof send>>;
const codeOf = ({ statusCode, body }: Answer): string =>
  statusCode < 400 ? 'done' : errorReply.parse(JSON.parse(body)).error.code;

/** A phone that is let in as one of these, from an address of its own. */
const phoneAs = async (role: Role, name: string = role): Promise<Device> => {
  const opened = await send(desk, api.openPairing, { query: { role } });
  const code = pairingReply.parse(opened.json()).invitation?.code ?? '';
  addresses += 1;
  const remoteAddress = `192.168.7.${String(100 + addresses)}`;
  const paired = await send({ remoteAddress, cookie: '' }, api.pair, { body: { code, name } });
  expect(pairReply.parse(paired.json())).toEqual({ letIn: true, role });
  return { remoteAddress, cookie: String(paired.headers['set-cookie']).split(';')[0] ?? '' };
};
const idOf = async (name: string): Promise<string> =>
  (await pairing.phones()).find((phone) => phone.name === name)?.id ?? '';

describe('every route', () => {
  it('says who may call it, as it is written here by hand', () => {
    for (const [name, route] of Object.entries(allRoutes))
      for (const role of [undefined, ...roles])
        expect([name, role, mayCall(role, name, route)]).toEqual([
          name,
          role,
          route.least === 'anyone' ||
            (role !== undefined && roles.indexOf(role) >= roles.indexOf(route.least)),
        ]);
  });

  it.each<[Role | 'nobody']>([['nobody'], ...roles.map((role): [Role] => [role])])(
    'is answered, or refused and nothing else, when %s asks',
    { timeout: 120_000 },
    async (who) => {
      const role = who === 'nobody' ? undefined : who;
      const device = role === undefined ? stranger : await phoneAs(role);
      const params = { id: 'x', kind: 'svg', code: 'K7QX', side: 'front', subject: 'cut' };
      const given = { ...params, tallyId: 'x', orderId: 'x', changeId: 'x', before: 'y' };
      for (const [name, route] of Object.entries(allRoutes)) {
        const may = mayCall(role, name, route);
        // A stream would not end.
        if (may && name === 'live') continue;
        const answer = await send(device, route, { params: given });
        const refused = role === undefined ? [401, 'pairing-needed'] : [403, 'role-too-low'];
        const got = [answer.statusCode, codeOf(answer)];
        if (may) {
          expect(got, name).not.toEqual(refused);
          expect(answer.statusCode, name).toBeLessThan(500);
        } else expect(got, name).toEqual(refused);
      }
    },
  );
});

describe('a role', () => {
  it('is refused with a sentence that says what it may, who may, and how to mend it', async () => {
    const apprentice = await phoneAs('reads-and-counts');
    const answer = await send(apprentice, api.keepSetting);
    expect(errorReply.parse(answer.json()).error).toEqual({
      code: 'role-too-low',
      message:
        'This phone may read and count; for this it has to be one that may decide on settings. Nothing was changed.',
      remedy:
        'Do it at the desk, or ask whoever runs the place to let this phone do more: under “Machine”, “Phones that are let in”.',
    });
  });

  it('does not describe a machine by the way', async () => {
    const phone = await phoneAs('decides');
    const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };
    const begin = (body: object) => send(phone, api.startStudy, { body: { id: 's1', ...body } });
    expect(codeOf(await begin({ stock, machine: { maxPowerPct: 99 } }))).toBe('role-too-low');
    expect(codeOf(await begin({ stock }))).toBe('done');
    const change = (body: object) => send(phone, api.changeStudy, { params: { id: 's1' }, body });
    expect(codeOf(await change({ machine: { maxPowerPct: 99 } }))).toBe('role-too-low');
    expect(codeOf(await change({ aim: 'gentlest' }))).toBe('done');
    const body = { stock, id: 's2', machine: { maxPowerPct: 70, speedRangeMmPerS: [1, 100] } };
    expect(codeOf(await send(desk, api.startStudy, { body }))).toBe('done');
  });

  it('is changed while the phone stays in, at the desk and by who runs the place', async () => {
    const phone = await phoneAs('decides', 'bench');
    const manager = await phoneAs('runs-the-place');
    const params = { id: await idOf('bench') };
    const change = async (by: Device, body: object) =>
      codeOf(await send(by, api.changePhone, { params, body }));
    const mayOpenExample = async () => codeOf(await send(phone, api.openExample));
    expect(await mayOpenExample()).toBe('done');
    expect(await change(phone, { role: 'runs-the-place' })).toBe('role-too-low');
    expect(await change(desk, { role: 'reads-and-counts' })).toBe('done');
    expect(await mayOpenExample()).toBe('role-too-low');
    expect(await change(manager, { role: 'decides', name: 'kit' })).toBe('done');
    expect(await mayOpenExample()).toBe('done');
    const told = pairingReply.parse((await send(phone, api.pairing)).json());
    expect(told).toEqual({ lan: true, desk: false, letIn: true, name: 'kit', role: 'decides' });
    const seen = pairingReply.parse((await send(manager, api.pairing)).json());
    expect(seen.phones?.map(({ name, role }) => [name, role])).toEqual([
      ['kit', 'decides'],
      ['runs-the-place', 'runs-the-place'],
    ]);
    expect(await change(desk, {})).toBe('done');
    expect(await change(desk, { role: 'owns' })).toBe('file-value-not-allowed');
    expect(codeOf(await send(desk, api.changePhone, { params: { id: 'x' } }))).toBe(
      'phone-not-found',
    );
  });

  it('is told to the open page of the phone, at first and when it changes, and to no other', async () => {
    const phone = await phoneAs('decides', 'bench');
    const other = await phoneAs('decides', 'other');
    const [one, two] = [phone, other].map((device) => send(device, api.live));
    const params = { id: await idOf('bench') };
    await new Promise((resolve) => setTimeout(resolve, 200));
    await send(desk, api.changePhone, { params, body: { role: 'reads-and-counts' } });
    await new Promise((resolve) => setTimeout(resolve, 200));
    for (const name of ['bench', 'other'])
      await send(desk, api.removePhone, { params: { id: await idOf(name) } });
    const rolesIn = (answer: Answer | undefined) =>
      [...(answer?.body ?? '').matchAll(/"role":"([a-z-]+)"/g)].map(([, role]) => role);
    expect(rolesIn(await one)).toEqual(['decides', 'reads-and-counts']);
    expect(rolesIn(await two)).toEqual(['decides']);
  });

  it('of a code is that which was said last, and the usual one where nobody said', async () => {
    expect((await pairing.open()).role).toBe('decides');
    const { code } = await pairing.open('reads-and-counts');
    expect(await pairing.open()).toMatchObject({ code, role: 'reads-and-counts' });
    const token = await pairing.redeem(code, 'kit');
    expect(token.ok && (await pairing.phoneOf(token.value))?.role).toBe('reads-and-counts');
    expect((await pairing.open()).role).toBe('decides');
  });
});
