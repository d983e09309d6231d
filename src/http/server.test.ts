import { problemOf } from '../core/problem.ts';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { testServer, type TestServer } from '../../test/samples/server.ts';
import type { Printer } from '../served/files/printer.ts';
import { StoreError } from '../store/storeError.ts';
import { api } from '../wire/api.ts';
import { errorReply } from '../wire/problem.ts';

let server: TestServer;
beforeEach(async () => {
  server = await testServer();
});
afterEach(() => server.close());

const host = '127.0.0.1:4870';
const json = { host, 'content-type': 'application/json' };
const stock = { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };

/** A printer that is of no use. */
const printerOf = (print: () => Promise<never>): Printer => ({
  jobSheet: print,
  pageBeside: print,
  wallList: print,
  reasoning: print,
});

const codeOf = (response: { json: () => unknown }) => errorReply.parse(response.json()).error.code;
const post = (payload: string | Buffer, headers: Record<string, string> = json) =>
  server.app.inject({ method: 'POST', url: '/api/studies', headers, payload });

describe('the border', () => {
  afterEach(async () => {
    expect((await server.ask(api.listStudies)).studies).toEqual([]);
  });

  it.each([
    ['{"stock":', 400, 'request-body-not-json'],
    ['', 400, 'request-body-not-json'],
    ['[]', 400, 'file-value-wrong-type'],
    ['null', 400, 'file-value-wrong-type'],
    ['{}', 400, 'file-value-missing'],
    ['{"stock":{"__proto__":{"a":1}}}', 400, 'request-body-not-json'],
    [
      JSON.stringify({ stock: { ...stock, nominalThicknessMm: '3 mm' } }),
      400,
      'file-value-wrong-type',
    ],
    [JSON.stringify({ stock: { ...stock, nominalThicknessMm: 1e9 } }), 400, 'file-value-too-big'],
    [JSON.stringify({ stock: { ...stock, nominalThicknessMm: -3 } }), 400, 'file-value-too-small'],
    ['{"stock":{"material":"ply","nominalThicknessMm":1e999,"thicknessReadingsMm":[]}}', 400, ''],
    [JSON.stringify({ stock, id: '../../etc' }), 400, 'file-value-refused'],
    [JSON.stringify({ stock, colour: 'red' }), 400, 'file-key-unknown'],
    [JSON.stringify({ stock: { ...stock, material: 'x'.repeat(500) } }), 400, 'file-text-too-long'],
    [JSON.stringify({ stock: { ...stock, material: ' ' } }), 400, 'file-text-empty'],
  ])('refuses %s', async (payload, status, code) => {
    const response = await post(payload);
    expect(response.statusCode).toBe(status);
    if (code !== '') expect(codeOf(response)).toBe(code);
    else errorReply.parse(response.json());
  });

  it('refuses what is too big, and what is no JSON by its own word', async () => {
    const big = await post(JSON.stringify({ stock, note: 'x'.repeat(3_000_000) }));
    expect([big.statusCode, codeOf(big)]).toEqual([413, 'request-body-too-big']);
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'application/xml']) {
      const response = await post(JSON.stringify({ stock }), { host, 'content-type': type });
      expect([response.statusCode, codeOf(response)]).toEqual([415, 'request-not-json-type']);
    }
  });

  it('refuses ids that can be none', async () => {
    const response = await server.app.inject({
      url: '/api/studies/..%2F..%2Fetc',
      headers: { host },
    });
    expect([response.statusCode, codeOf(response)]).toEqual([400, 'file-value-refused']);
    const broken = await server.app.inject({ url: '/api/studies/%E0%A4%A', headers: { host } });
    expect([broken.statusCode, codeOf(broken)]).toEqual([400, 'request-address-malformed']);
  });

  it('answers to its own name only', async () => {
    for (const name of ['127.0.0.1', 'localhost:4870', '[::1]:4870']) {
      const response = await server.app.inject({ url: '/api/health', headers: { host: name } });
      expect(response.statusCode).toBe(200);
    }
    for (const name of ['workshop.example', '127.0.0.1.example', '192.168.1.4:4870']) {
      const response = await server.app.inject({ url: '/api/health', headers: { host: name } });
      expect([response.statusCode, codeOf(response)]).toEqual([403, 'foreign-host']);
    }
  });

  it('takes no change from another page', async () => {
    const payload = JSON.stringify({ stock });
    for (const extra of [
      { origin: 'http://elsewhere.example' },
      { origin: 'null' },
      { origin: 'http://127.0.0.1:9999' },
      { 'sec-fetch-site': 'cross-site' },
    ]) {
      const response = await post(payload, { ...json, ...extra });
      expect([response.statusCode, codeOf(response)]).toEqual([403, 'foreign-page']);
    }
    const opened = await server.app.inject({
      method: 'POST',
      url: '/api/example',
      headers: { host, origin: 'http://elsewhere.example' },
    });
    expect(opened.statusCode).toBe(403);
  });

  it('says so at addresses that are not there', async () => {
    const response = await server.app.inject({ url: '/api/nothing', headers: { host } });
    expect([response.statusCode, codeOf(response)]).toEqual([404, 'no-such-address']);
    const method = await server.app.inject({ method: 'PUT', url: '/api/home', headers: { host } });
    expect(method.statusCode).toBe(404);
  });
});

describe('the server', () => {
  it('is well', async () => {
    expect(await server.ask(api.health)).toEqual({ status: 'ok', version: '9.9.9' });
  });

  it('takes a change from its own page', async () => {
    const response = await post(JSON.stringify({ stock }), {
      ...json,
      origin: `http://${host}`,
      'sec-fetch-site': 'same-origin',
    });
    expect(response.statusCode).toBe(200);
  });

  it('forbids what a page does not need', async () => {
    const { headers } = await server.send(api.health);
    expect(headers['content-security-policy']).toMatch(/default-src 'self'/);
    expect(headers['content-security-policy']).not.toMatch(/upgrade-insecure-requests|unsafe-eval/);
    expect(headers['strict-transport-security']).toBeUndefined();
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['cache-control']).toBe('no-store');
  });

  it('describes every route', async () => {
    const response = await server.app.inject({ url: '/api/openapi.json', headers: { host } });
    const { openapi, paths } = z
      .object({
        openapi: z.string(),
        paths: z.record(z.string(), z.record(z.string(), z.unknown())),
      })
      .parse(response.json());
    expect(openapi).toMatch(/^3\.1/);
    for (const { method, path } of Object.values(api)) {
      const described = path.replace(/:([A-Za-z]+)/g, '{$1}');
      expect(paths[described], described).toHaveProperty(method.toLowerCase());
    }
    const page = await server.app.inject({ url: '/api/docs', headers: { host } });
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(page.body).toContain('/api/studies/:id/events');
  });

  it('keeps its own trouble to itself, and reports it', async () => {
    await server.close();
    server = await testServer({
      printer: printerOf(() => Promise.reject(new Error('a secret path'))),
    });
    await server.ask(api.openExample);
    const [study] = (await server.ask(api.listStudies)).studies;
    const response = await server.send(api.cardFile, {
      params: { id: study?.id ?? '', code: study?.cardCodes[0] ?? '', kind: 'pdf' },
    });
    expect([response.statusCode, codeOf(response)]).toEqual([500, 'something-broke']);
    expect(response.body).not.toContain('secret');
    expect(server.reported).toHaveLength(1);
  });

  it('says what is the matter with the store', async () => {
    await server.close();
    server = await testServer({
      printer: printerOf(() =>
        Promise.reject(new StoreError(problemOf('store-not-writable', { file: '/disk' }))),
      ),
    });
    await server.ask(api.openExample);
    const [study] = (await server.ask(api.listStudies)).studies;
    const refusal = await server.refusal(api.cardFile, {
      params: { id: study?.id ?? '', code: study?.cardCodes[0] ?? '', kind: 'pdf' },
    });
    expect(refusal).toEqual([503, 'store-not-writable']);
  });
});

describe('the page', () => {
  let folder: string;
  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'throughcut-page-'));
    writeFileSync(join(folder, 'index.html'), '<title>the page</title>');
    mkdirSync(join(folder, 'assets'));
    writeFileSync(join(folder, 'assets', 'main-abc123.js'), 'let x');
    await server.close();
    server = await testServer({ pageFolder: folder });
  });
  afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  const get = (url: string) => server.app.inject({ url, headers: { host } });

  it('is served at every address that it understands itself', async () => {
    for (const url of ['/', '/study/s1', '/book?text=birch']) {
      const response = await get(url);
      expect(response.statusCode).toBe(200);
      expect(response.body).toBe('<title>the page</title>');
      expect(response.headers['cache-control']).toBe('no-cache');
      expect(response.headers['content-security-policy']).toMatch(/script-src 'self'/);
    }
  });

  it('keeps what is named by its content, and nothing else, in the browser', async () => {
    const response = await get('/assets/main-abc123.js');
    expect(response.headers['cache-control']).toMatch(/immutable/);
    expect((await get('/assets/gone.js')).statusCode).toBe(404);
    expect((await get('/../package.json')).statusCode).toBe(404);
    expect((await get('/%2e%2e/%2e%2e/etc/passwd')).body).toBe('<title>the page</title>');
    expect((await get('/api/nothing')).statusCode).toBe(404);
  });
});
