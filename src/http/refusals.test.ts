import { subscribe, unsubscribe } from 'node:diagnostics_channel';
import { connect, type AddressInfo } from 'node:net';
import { text } from 'node:stream/consumers';
import type { FastifyInstance } from 'fastify';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import { errorReply } from '../wire/problem.ts';

let server: TestServer;
let port: number;
beforeEach(async () => {
  server = await testServer();
  await server.app.listen({ port: 0, host: '127.0.0.1' });
  port = (server.app.server.address() as AddressInfo).port;
});
afterEach(() => server.close());

/** Sends bytes as they are, and gives what comes back until the other side closes. */
const sent = async (bytes: string): Promise<string> => {
  const socket = connect(port, '127.0.0.1');
  socket.write(bytes);
  return text(socket);
};
const lines = (...head: readonly string[]): string => [...head, '', ''].join('\r\n');

const refusals = [
  ['no request at all', 'hello there\r\n\r\n', 400, 'request-not-http'],
  [
    'a head that does not end',
    lines('GET / HTTP/1.1', 'host: localhost', `x: ${'y'.repeat(40_000)}`),
    431,
    'request-head-too-big',
  ],
  ['no host', lines('GET /api/health HTTP/1.1', 'connection: close'), 403, 'foreign-host'],
  [
    'a foreign host',
    lines('GET / HTTP/1.1', 'host: workshop.example', 'connection: close'),
    403,
    'foreign-host',
  ],
  [
    'an address that cannot be read',
    lines('GET /%zz HTTP/1.1', 'host: localhost', 'connection: close'),
    400,
    'request-address-malformed',
  ],
  [
    'an address that is not there',
    lines('GET /api/nothing HTTP/1.1', 'host: localhost', 'connection: close'),
    404,
    'no-such-address',
  ],
] as const;

describe('every refusal', () => {
  it.each(refusals)(
    'speaks in words and is held safely: %s',
    async (_name, bytes, status, code) => {
      const reply = await sent(bytes);
      const [head = '', body = ''] = reply.split('\r\n\r\n');
      expect(head).toMatch(new RegExp(`^HTTP/1.1 ${String(status)} `));
      expect(errorReply.parse(JSON.parse(body)).error.code).toBe(code);
      expect(head.toLowerCase()).toMatch(/x-content-type-options: nosniff/);
      expect(head.toLowerCase()).toMatch(/content-security-policy: default-src/);
      expect(head.toLowerCase()).toMatch(/referrer-policy: no-referrer/);
    },
  );

  it('ends a request that does not come whole', async () => {
    const { server: listener } = server.app;
    expect([listener.requestTimeout, listener.headersTimeout]).toEqual([20_000, 20_000]);
    // The same limit, sooner: nothing is learnt by waiting for it.
    listener.requestTimeout = 500;
    listener.headersTimeout = 500;
    const reply = await sent(
      lines(
        'POST /api/studies HTTP/1.1',
        'host: localhost',
        'content-type: application/json',
        'content-length: 900',
      ) + '{"half"',
    );
    expect(reply).toMatch(/^HTTP\/1.1 408 /);
    expect(reply).toContain('request-took-too-long');
  });
});

describe('the page of routes', () => {
  it('lists every route that the server has', async () => {
    const page = (await server.app.inject({ url: '/api/docs', headers: { host: 'localhost' } }))
      .body;
    const listed = [...page.matchAll(/<td>([A-Z]+)<td><code>([^<]+)<\/code>/g)].map(
      ([, method = '', path = '']) => `${method} ${path}`,
    );
    const own = (await routesMade()).sort();
    expect(own.length).toBeGreaterThan(40);
    expect([...listed].sort()).toEqual(own);
  });
});

/** Every route under /api that a new server makes, as the framework tells it. */
const routesMade = async (): Promise<string[]> => {
  const made: string[] = [];
  const hear = (told: unknown): void => {
    const { fastify } = told as { readonly fastify: FastifyInstance };
    fastify.addHook('onRoute', ({ method, path }) => {
      for (const one of [method].flat())
        if (one !== 'HEAD' && path.startsWith('/api/')) made.push(`${one} ${path}`);
    });
  };
  subscribe('fastify.initialization', hear);
  const another = await testServer();
  unsubscribe('fastify.initialization', hear);
  await another.close();
  return made;
};
