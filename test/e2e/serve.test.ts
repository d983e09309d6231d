import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sampleCard, sampleEvent } from '../samples/studies.ts';
import { runProgram } from './program.ts';
import { runServer, type RunningServer } from './server.ts';

const stock = { material: 'plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };

describe('the server as a process', () => {
  let server: RunningServer;
  beforeEach(async () => {
    server = await runServer();
  });
  afterEach(() => server.remove());

  const post = async (path: string, body: unknown): Promise<unknown> => {
    const reply = await fetch(`${server.base}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (!reply.ok) throw new Error(await reply.text());
    return reply.json();
  };
  const storedIds = async (): Promise<readonly string[]> => {
    const reply = await fetch(`${server.base}/api/studies/s1`);
    const { study } = (await reply.json()) as { study: { events: { id: string }[] } };
    return study.events.map(({ id }) => id);
  };

  it('loses nothing that it acknowledged when it is killed between writes', async () => {
    await post('/api/studies', { id: 's1', stock });
    await post('/api/studies/s1/cards', { card: sampleCard() });
    const heard: string[] = [];
    for (let round = 0; round < 3; round += 1) {
      const killedAfter = heard.length + 15;
      let killed: Promise<void> | undefined;
      for (let i = 0; i < 200; i += 1) {
        const id = `r${String(round)}e${String(i)}`;
        const acknowledged = await post('/api/studies/s1/events', {
          events: [sampleEvent(id)],
        }).then(
          () => true,
          () => false,
        );
        if (!acknowledged) break;
        heard.push(id);
        // While the next write is under way.
        if (heard.length === killedAfter) killed = server.kill();
      }
      await killed;
      await server.start();
      const stored = await storedIds();
      expect(stored.filter((id) => heard.includes(id))).toEqual(heard);
      // What was sent but not acknowledged may be there or not; sent again it is there once.
      await post('/api/studies/s1/events', {
        events: [...heard, 'again'].map((id) => sampleEvent(id)),
      });
      const ids = await storedIds();
      expect(new Set(ids).size).toBe(ids.length);
      heard.splice(0, heard.length, ...ids);
    }
  });

  it('describes itself, and keeps strangers out', async () => {
    const described = await fetch(`${server.base}/api/openapi.json`);
    expect(described.status).toBe(200);
    const elsewhere = await fetch(`${server.base}/api/example`, {
      method: 'POST',
      headers: { origin: 'http://elsewhere.example' },
    });
    expect(elsewhere.status).toBe(403);
  });
});

describe('starting and stopping', () => {
  let data: string;
  beforeEach(() => {
    data = mkdtempSync(join(tmpdir(), 'throughcut-start-'));
  });
  afterEach(() => {
    rmSync(data, { recursive: true, force: true });
  });

  it('prints its address and data folder, and stops cleanly when told to', async () => {
    const port = await unusedPort();
    const environment = { THROUGHCUT_DATA: data, THROUGHCUT_PORT: String(port) };
    const { code, out, err } = await runProgram(['serve'], {
      environment,
      started: (pid) => {
        void whenUp(port).then(() => process.kill(pid, 'SIGTERM'));
      },
    });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toContain(`http://127.0.0.1:${String(port)}`);
    expect(out).toContain(data);
  });

  it('says so when the port is taken, and gives up', async () => {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    const address = other.address();
    const port = typeof address === 'object' && address !== null ? String(address.port) : '';
    const environment = { THROUGHCUT_DATA: data, THROUGHCUT_PORT: port };
    const { code, err } = await runProgram(['serve'], { environment });
    other.close();
    expect(code).toBe(2);
    expect(err).toContain(`Port ${port} is taken`);
  });

  it('says so when the data folder cannot be used, and gives up', async () => {
    writeFileSync(join(data, 'in-the-way'), '');
    const environment = {
      THROUGHCUT_DATA: join(data, 'in-the-way'),
      THROUGHCUT_PORT: String(await unusedPort()),
    };
    const { code, err } = await runProgram(['serve'], { environment });
    expect(code).toBe(2);
    expect(err).toContain('cannot be opened');
  });

  it.each(['port', '0', '70000', '48.7'])('says so when THROUGHCUT_PORT is %s', async (port) => {
    const environment = { THROUGHCUT_DATA: data, THROUGHCUT_PORT: port };
    const { code, err } = await runProgram(['serve'], { environment });
    expect(code).toBe(2);
    expect(err).toContain('which is no port');
  });
});

const unusedPort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const probe = createServer();
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => {
        if (typeof address === 'object' && address !== null) resolve(address.port);
        else reject(new Error('no port'));
      });
    });
  });

const whenUp = async (port: number): Promise<void> => {
  for (let tries = 0; tries < 300; tries += 1) {
    const up = await fetch(`http://127.0.0.1:${String(port)}/api/health`).then(
      ({ ok }) => ok,
      () => false,
    );
    if (up) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
};
