import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { testServer } from '../../test/samples/server.ts';
import { tlsFiles } from '../host/tlsFiles.ts';

const ours = '127.0.0.1:4870';

describe('a server that is told to stop', () => {
  it('finishes the answer that is under way, takes no other, and ends open streams', async () => {
    let finish = (): void => undefined;
    let asked = (): void => undefined;
    const isAsked = new Promise<void>((resolve) => (asked = resolve));
    const server = await testServer({
      // Stands for any answer that takes its time.
      printer: {} as never,
      pictures: {} as never,
    });
    server.app.get('/slow', async () => {
      asked();
      await new Promise<void>((resolve) => (finish = resolve));
      return { answer: 'whole' };
    });
    const base = await server.app.listen({ host: '127.0.0.1', port: 0 });
    const live = await fetch(`${base}/api/live`);
    const slow = fetch(`${base}/slow`);
    await isAsked;
    const began = performance.now();
    const closed = server.close();
    expect(await live.text()).toContain(': here');
    expect(performance.now() - began).toBeLessThan(2000);
    await pause(100);
    await expect(fetch(`${base}/api/health`)).rejects.toThrow();
    finish();
    expect(await (await slow).json()).toEqual({ answer: 'whole' });
    await closed;
  });

  it('does not wait for a request that never comes whole', async () => {
    const server = await testServer();
    const base = await server.app.listen({ host: '127.0.0.1', port: 0 });
    const socket = connect(Number(new URL(base).port), '127.0.0.1');
    const ended = new Promise((resolve) => socket.once('close', resolve));
    socket.on('error', () => undefined);
    await new Promise<void>((resolve) =>
      socket.write(`POST /api/studies HTTP/1.1\r\nhost: ${ours}\r\n`, () => resolve()),
    );
    const began = performance.now();
    await server.close();
    await ended;
    expect(performance.now() - began).toBeLessThan(9000);
  });
});

describe('an own certificate', () => {
  let folder: string;
  let files: { readonly THROUGHCUT_TLS_CERT: string; readonly THROUGHCUT_TLS_KEY: string };
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'throughcut-tls-'));
    files = {
      THROUGHCUT_TLS_CERT: join(folder, 'cert.pem'),
      THROUGHCUT_TLS_KEY: join(folder, 'key.pem'),
    };
    execFileSync(
      'openssl',
      [
        ...['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1'],
        ...['-nodes', '-days', '2', '-subj', '/CN=laser.example'],
        ...['-addext', 'subjectAltName=DNS:laser.example,DNS:localhost,IP:192.168.7.2'],
        ...['-out', files.THROUGHCUT_TLS_CERT, '-keyout', files.THROUGHCUT_TLS_KEY],
      ],
      { stdio: 'ignore' },
    );
  });
  afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  it('encrypts what is served, under its names; a change from the page that it serves is made', async () => {
    const tls = tlsFiles(files);
    if (!tls.ok || tls.value === undefined) throw new Error('no certificate');
    const { cert, isFor, names } = tls.value;
    expect(names).toEqual(['laser.example', '192.168.7.2']);
    expect(['laser.example', '192.168.7.2', 'elsewhere.example', '10.0.0.1'].map(isFor)).toEqual([
      true,
      true,
      false,
      false,
    ]);
    const server = await testServer({ tls: tls.value });
    const base = await server.app.listen({ host: '127.0.0.1', port: 0 });
    const port = Number(new URL(base).port);
    const host = `localhost:${String(port)}`;
    const asked = (origin?: string) =>
      new Promise<number | undefined>((resolve, reject) => {
        const headers = { host, ...(origin === undefined ? {} : { origin }) };
        request(
          {
            host: '127.0.0.1',
            servername: 'localhost',
            port,
            ca: cert,
            headers,
            path: '/api/example',
            method: 'POST',
          },
          (reply) => {
            reply.resume();
            resolve(reply.statusCode);
          },
        )
          .on('error', reject)
          .end();
      });
    try {
      expect(await asked(`https://${host}`)).toBe(200);
      expect(await asked(`http://${host}`)).toBe(403);
      expect(await asked('https://laser.example')).toBe(403);
    } finally {
      await server.close();
    }
  });

  it('is refused in words where it is not one, half said, or the key is another’s', () => {
    expect(tlsFiles({})).toEqual({ ok: true, value: undefined });
    const codeOf = (environment: Record<string, string>) => {
      const read = tlsFiles(environment);
      return read.ok ? 'taken' : read.problem.code;
    };
    expect(codeOf(files)).toBe('taken');
    expect(codeOf({ THROUGHCUT_TLS_CERT: files.THROUGHCUT_TLS_CERT })).toBe('tls-half-said');
    expect(codeOf({ ...files, THROUGHCUT_TLS_KEY: join(folder, 'nowhere') })).toBe(
      'tls-not-usable',
    );
    writeFileSync(join(folder, 'text'), 'no certificate');
    expect(codeOf({ ...files, THROUGHCUT_TLS_CERT: join(folder, 'text') })).toBe('tls-not-usable');
    execFileSync('openssl', ['genpkey', '-algorithm', 'ed25519', '-out', join(folder, 'other')]);
    expect(codeOf({ ...files, THROUGHCUT_TLS_KEY: join(folder, 'other') })).toBe('tls-not-usable');
  });
});
