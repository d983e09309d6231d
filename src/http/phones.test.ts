import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sampleTime } from '../../test/samples/studies.ts';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { pairingReply } from '../wire/pairing.ts';
import { errorReply } from '../wire/problem.ts';
import { openStore } from '../store/openStore.ts';
import { openPairing, type Pairing } from './pairing.ts';

const lanHost = '192.168.7.2:4870';
const phone = '192.168.7.30';

let folder: string;
let store: Awaited<ReturnType<typeof openStore>>;
let server: TestServer;
let pairing: Pairing;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-phones-'));
  store = await openStore({ kind: 'file', file: join(folder, 'w.sqlite') }, sampleTime);
  pairing = openPairing({
    kept: store.phones,
    now: () => new Date().toISOString(),
    paused: () => undefined,
  });
  await pairing.open();
  server = await testServer({
    lan: {
      pairing,
      isOwnName: (name) => name === '192.168.7.2',
      addresses: () => [`http://${lanHost}`],
    },
  });
});
afterEach(async () => {
  await server.close();
  await store.close();
  rmSync(folder, { recursive: true, force: true });
});

const get = (url: string, remoteAddress: string, headers: Record<string, string> = {}) =>
  server.app.inject({ url, remoteAddress, headers: { host: lanHost, ...headers } });
const pair = (code: string, remoteAddress = phone) =>
  server.app.inject({
    method: 'POST',
    url: '/api/pair',
    remoteAddress,
    headers: { host: lanHost, origin: `http://${lanHost}`, 'content-type': 'application/json' },
    payload: JSON.stringify({ code }),
  });
const atDesk = (method: 'POST' | 'DELETE', url: string, remoteAddress = '127.0.0.1', cookie = '') =>
  server.app.inject({ method, url, remoteAddress, headers: { host: lanHost, cookie } });
const codeOf = (response: { json: () => unknown }) => errorReply.parse(response.json()).error.code;
const cookieOf = (response: { headers: Record<string, unknown> }) =>
  String(response.headers['set-cookie']);

describe('a phone in the network', () => {
  it('is let in by the code that the desk sees, and by nothing else', async () => {
    const before = await get('/api/home', phone);
    expect([before.statusCode, codeOf(before)]).toEqual([401, 'pairing-needed']);
    const desk = pairingReply.parse((await get('/api/pairing', '127.0.0.1')).json());
    expect(desk).toMatchObject({ lan: true, desk: true, letIn: true });
    expect(desk.invitation?.addresses).toEqual([`http://${lanHost}`]);

    const wrong = await pair(desk.invitation?.code === '000000' ? '000001' : '000000');
    expect([wrong.statusCode, codeOf(wrong)]).toEqual([403, 'pairing-code-wrong']);
    expect(wrong.headers['set-cookie']).toBeUndefined();

    const paired = await pair(desk.invitation?.code ?? '');
    expect(paired.json()).toEqual({ letIn: true, role: 'decides' });
    expect(cookieOf(paired)).toMatch(/HttpOnly; SameSite=Strict; Path=\/; Max-Age=34560000$/);
    const cookie = cookieOf(paired).split(';')[0] ?? '';
    expect((await get('/api/home', phone, { cookie: `other=1; ${cookie}` })).statusCode).toBe(200);
    const known = pairingReply.parse((await get('/api/pairing', phone, { cookie })).json());
    expect(known).toEqual({
      ...{ lan: true, desk: false, letIn: true },
      ...{ name: 'Phone 1', role: 'decides' },
    });
    const forged = await get('/api/home', phone, { cookie: `${cookie}x` });
    expect(forged.statusCode).toBe(401);
  });

  it('is named, listed at the desk, and put out with a tap there', async () => {
    const paired = await pair((await pairing.open()).code);
    const cookie = cookieOf(paired).split(';')[0] ?? '';
    const listed = pairingReply.parse((await get('/api/pairing', '127.0.0.1')).json());
    expect(listed.phones).toMatchObject([{ name: 'Phone 1' }]);
    expect(listed.invitation?.code).toBeUndefined();
    const address = `/api/pairing/phones/${listed.phones?.[0]?.id ?? ''}`;

    const byPhone = [
      await atDesk('POST', '/api/pairing', phone, cookie),
      await atDesk('DELETE', address, phone, cookie),
    ];
    expect(byPhone.map(codeOf)).toEqual(['role-too-low', 'role-too-low']);
    expect((await get('/api/home', phone, { cookie })).statusCode).toBe(200);

    expect((await atDesk('DELETE', address)).json()).toEqual({ removed: true });
    expect((await get('/api/home', phone, { cookie })).statusCode).toBe(401);
    expect(codeOf(await atDesk('DELETE', address))).toBe('phone-not-found');
    const opened = pairingReply.parse((await atDesk('POST', '/api/pairing')).json());
    expect(opened.invitation?.code).toMatch(/^\d{6}$/);
  });

  it('is told no code', async () => {
    const told = pairingReply.parse((await get('/api/pairing', phone)).json());
    expect(told).toEqual({ lan: true, desk: false, letIn: false });
  });

  it('may not guess for long', async () => {
    for (let tries = 0; tries < 5; tries += 1) expect((await pair('guess')).statusCode).toBe(403);
    const sixth = await pair('guess');
    expect([sixth.statusCode, codeOf(sixth)]).toEqual([429, 'too-many-requests']);
    expect((await pair((await pairing.open()).code, '192.168.7.31')).statusCode).toBe(200);
  });

  it('cannot pass for the desk by what it says of itself', async () => {
    const forwarded = { 'x-forwarded-for': '127.0.0.1', forwarded: 'for=127.0.0.1' };
    expect((await get('/api/home', phone, forwarded)).statusCode).toBe(401);
    expect((await get('//api/home', phone)).statusCode).not.toBe(200);
    expect((await get('/api/../api/home', phone)).statusCode).not.toBe(200);
    expect((await get('/%61pi/home', phone)).statusCode).not.toBe(200);
  });

  it('must call the computer by its own name', async () => {
    const foreign = await get('/api/pairing', phone, { host: 'workshop.example' });
    expect([foreign.statusCode, codeOf(foreign)]).toEqual([403, 'foreign-host']);
  });
});

describe('without --lan', () => {
  it('nobody but the desk is let in', async () => {
    await server.close();
    server = await testServer();
    const desk = await server.app.inject({ url: '/api/pairing', headers: { host: 'localhost' } });
    expect(pairingReply.parse(desk.json())).toEqual({
      ...{ lan: false, desk: true, letIn: true },
      role: 'runs-the-place',
    });
    const other = await get('/api/home', phone, { host: 'localhost' });
    expect([other.statusCode, codeOf(other)]).toEqual([401, 'pairing-needed']);
  });
});
