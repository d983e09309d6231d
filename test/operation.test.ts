import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { runCommand } from '../bench/server/program.ts';
import { dataFile } from '../src/host/dataFolder.ts';

it('the program logs in JSON without names, tells metrics, and ends with 0 when it is told to stop', async () => {
  const data = mkdtempSync(join(tmpdir(), 'throughcut-operation-'));
  const port = '4987';
  const base = `http://127.0.0.1:${port}`;
  const asks = async (pid: number): Promise<readonly [metrics: string, code: string]> => {
    await answers(base);
    await fetch(`${base}/api/book?text=somebody`);
    await fetch(`${base}/api/studies/somebody`);
    const metrics = await (await fetch(`${base}/metrics`)).text();
    const pairing = (await (await fetch(`${base}/api/pairing`)).json()) as {
      readonly invitation?: { readonly code?: string };
    };
    process.kill(pid, 'SIGTERM');
    return [metrics, pairing.invitation?.code ?? ''];
  };
  try {
    let told: ReturnType<typeof asks> | undefined;
    const { code, out, err } = await runCommand(['serve', '--lan'], data, {
      environment: { THROUGHCUT_LOG: 'json', THROUGHCUT_PORT: port },
      started: (pid) => {
        told = asks(pid);
      },
    });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const lines = out
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(lines[0]).toMatchObject({
      what: 'started',
      level: 'info',
      store: 'file',
      found: 'none',
    });
    expect(lines.slice(-2).map(({ what }) => what)).toEqual(['stopping', 'stopped']);
    expect(lines).toContainEqual(
      expect.objectContaining({ what: 'request', route: '/api/studies/:id', status: 404 }),
    );
    expect(out).not.toContain('somebody');
    const [metrics = '', pairingCode = ''] = (await told) ?? [];
    expect(pairingCode).toMatch(/^\d{6}$/);
    expect(out).not.toContain(pairingCode);
    expect(metrics).toContain(
      'throughcut_requests_total{method="GET",route="/api/studies/:id",status="404"} 1',
    );
    const refused = await runCommand(['serve'], data, { environment: { THROUGHCUT_LOG: 'xml' } });
    expect(refused).toMatchObject({ code: 2 });
    expect(refused.err).toContain('THROUGHCUT_LOG is “xml”');
  } finally {
    rmSync(data, { recursive: true, force: true });
  }
});

it('says that a new workshop is begun where none was kept, or the data file is empty, and where a backup would be', async () => {
  const data = mkdtempSync(join(tmpdir(), 'throughcut-begun-'));
  const saysAtStart = async (backups = ''): Promise<string> => {
    const port = '4986';
    const { code, out } = await runCommand(['serve'], data, {
      environment: { THROUGHCUT_PORT: port, THROUGHCUT_BACKUP: backups },
      started: (pid) => void answers(`http://127.0.0.1:${port}`).then(() => process.kill(pid)),
    });
    expect(code).toBe(0);
    return out;
  };
  try {
    expect(await saysAtStart()).toMatch(/No workshop was kept there.*restore --from FILE/);
    expect(await saysAtStart()).not.toMatch(/new (workshop|one) is begun/);
    rmSync(data, { recursive: true });
    mkdirSync(data);
    writeFileSync(dataFile(data), '');
    const other = join(data, 'backups');
    const said = await saysAtStart(other);
    expect(said).toMatch(/it was empty, so a new workshop is begun/);
    expect(said).toContain(`Backups that were made on a schedule lie in ${other}.`);
  } finally {
    rmSync(data, { recursive: true, force: true });
  }
}, 180_000);

const answers = async (base: string): Promise<void> => {
  for (;;) {
    const isUp = await fetch(`${base}/api/health`).then(
      ({ ok }) => ok,
      () => false,
    );
    if (isUp) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
};
