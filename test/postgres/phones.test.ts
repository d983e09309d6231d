import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openPairing } from '../../src/http/pairing.ts';
import { openStore } from '../../src/store/openStore.ts';
import { sampleTime } from '../samples/studies.ts';
import { testServer } from '../samples/server.ts';
import { startPostgres, type PostgresServer } from './postgresServer.ts';

const host = '192.168.7.2:4870';

let server: PostgresServer;
beforeAll(async () => {
  server = await startPostgres();
});
afterAll(() => server.destroy());

/** One of several programs at work in one workshop. */
const program = async (url: string) => {
  const place = { kind: 'database', url } as const;
  const store = await openStore(place, sampleTime);
  const pairing = openPairing({
    kept: store.phones,
    now: () => new Date().toISOString(),
    paused: () => undefined,
  });
  const lan = { pairing, isOwnName: () => true, addresses: () => [] };
  const served = await testServer({ lan }, place);
  const ask = (url: string, cookie: string) =>
    served.app.inject({ url, remoteAddress: '192.168.7.30', headers: { host, cookie } });
  return {
    pairing,
    app: served.app,
    status: async (cookie: string) => (await ask('/api/home', cookie)).statusCode,
    pair: (code: string) =>
      served.app.inject({
        method: 'POST',
        url: '/api/pair',
        remoteAddress: '192.168.7.30',
        headers: { host, origin: `http://${host}`, 'content-type': 'application/json' },
        payload: JSON.stringify({ code }),
      }),
    close: async () => {
      await served.close();
      await store.close();
    },
  };
};

it('a phone that one program let in is let in by all, and put out by all; its open stream ends', async () => {
  const url = await server.newDatabase('phones');
  const one = await program(url);
  const other = await program(url);
  try {
    const { code } = await one.pairing.open();
    const paired = await other.pair(code);
    const cookie = String(paired.headers['set-cookie']).split(';')[0] ?? '';
    expect(await Promise.all([one.status(cookie), other.status(cookie)])).toEqual([200, 200]);

    const live = other.app.inject({
      url: '/api/live',
      remoteAddress: '192.168.7.30',
      headers: { host, cookie },
    });
    let endedAt = 0;
    const ended = live.then(() => void (endedAt = performance.now()));
    await pause(1500);
    expect(endedAt).toBe(0);

    const [phone] = await one.pairing.phones();
    const removed = await one.app.inject({
      method: 'DELETE',
      url: `/api/pairing/phones/${phone?.id ?? ''}`,
      remoteAddress: '127.0.0.1',
      headers: { host },
    });
    expect(removed.statusCode).toBe(200);
    const at = performance.now();
    expect(await Promise.all([one.status(cookie), other.status(cookie)])).toEqual([401, 401]);
    await ended;
    expect(endedAt - at).toBeLessThan(1000);
  } finally {
    await one.close();
    await other.close();
  }
});
