import { describe, expect, it } from 'vitest';
import { testServer } from '../../test/samples/server.ts';
import { metricsContentType, openMetrics } from './metrics.ts';

const ours = { host: '127.0.0.1:4870' };
const bearer = (token: string) => ({ ...ours, authorization: `Bearer ${token}` });

interface Sample {
  readonly name: string;
  readonly labels: string;
  readonly value: number;
}

/** Reads OpenMetrics text by the specification's grammar (OpenMetrics 1.0, 4.1 ABNF); throws at a line that is none. */
const parsed = (text: string) => {
  expect(text.endsWith('# EOF\n')).toBe(true);
  const families = new Map<string, { type: string; samples: Sample[] }>();
  let now: { name: string; type: string; samples: Sample[] } | undefined;
  for (const line of text.split('\n').slice(0, -2)) {
    const about = /^# (TYPE|UNIT|HELP) ([a-zA-Z_:][a-zA-Z0-9_:]*) (.+)$/.exec(line);
    if (about !== null) {
      const [, what, name = '', rest = ''] = about;
      if (what === 'TYPE') {
        // Families do not come twice, nor between one another.
        expect(families.has(name)).toBe(false);
        now = { name, type: rest, samples: [] };
        families.set(name, now);
      }
      expect(now?.name).toBe(name);
      if (what === 'UNIT') expect(name.endsWith(`_${rest}`)).toBe(true);
      continue;
    }
    const label = `[a-zA-Z_][a-zA-Z0-9_]*="(?:[^"\\\\\\n]|\\\\["\\\\n])*"`;
    const sample = new RegExp(
      `^([a-zA-Z_:][a-zA-Z0-9_:]*)(\\{${label}(?:,${label})*\\})? (-?[0-9][0-9.e+-]*)$`,
    ).exec(line);
    if (sample === null) throw new Error(`no line of the format: ${line}`);
    const [, name = '', labels = '', value = ''] = sample;
    const ends: Readonly<Record<string, readonly string[]>> = {
      counter: ['_total'],
      histogram: ['_bucket', '_count', '_sum'],
      info: ['_info'],
      gauge: [''],
    };
    const allowed = ends[now?.type ?? ''] ?? [];
    expect(allowed.map((end) => `${now?.name ?? ''}${end}`)).toContain(name);
    now?.samples.push({ name, labels, value: Number(value) });
  }
  return families;
};

describe('metrics', () => {
  it('are in the open format, whatever is counted', () => {
    const metrics = openMetrics('1.2 "x"\\', {
      stand: () => ({ lastAt: '2031-05-06T07:08:09.000Z' }),
      hear: () => () => undefined,
    });
    for (const tookMs of [1, 5, 60, 60, 99_000])
      metrics.note({ method: 'GET', route: '/api/"odd"\n\\:id', status: 200, tookMs });
    const families = parsed(metrics.text());
    metrics.close();
    const buckets = (families.get('throughcut_request_seconds')?.samples ?? []).filter(({ name }) =>
      name.endsWith('_bucket'),
    );
    // Each holds the ones below it; the last holds all.
    const counts = buckets.map(({ value }) => value);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(counts[0]).toBe(2);
    expect(buckets.at(-1)).toMatchObject({ labels: '{le="+Inf"}', value: 5 });
    expect(families.get('throughcut_requests')?.samples).toMatchObject([{ value: 5 }]);
    expect(families.get('throughcut_backup_last_seconds')?.samples).toMatchObject([
      { value: Date.UTC(2031, 4, 6, 7, 8, 9) / 1000 },
    ]);
  });

  it('are told at this computer, elsewhere to who has the token, and say nothing of what was asked', async () => {
    const server = await testServer({ metricsToken: 'a long secret' });
    const from = (remoteAddress: string, headers: Record<string, string> = ours) =>
      server.app.inject({ url: '/metrics', remoteAddress, headers });
    try {
      await server.app.inject({ url: '/api/studies/of-somebody', headers: ours });
      const here = await from('127.0.0.1');
      expect(here.statusCode).toBe(200);
      expect(here.headers['content-type']).toBe(metricsContentType);
      const families = parsed(here.body);
      expect(here.body).not.toContain('of-somebody');
      expect(families.get('throughcut_requests')?.samples.map(({ labels }) => labels)).toContain(
        '{method="GET",route="/api/studies/:id",status="404"}',
      );
      const elsewhere = '192.168.7.30';
      expect((await from(elsewhere)).statusCode).toBe(401);
      expect((await from(elsewhere, bearer('a long secre'))).statusCode).toBe(401);
      expect((await from(elsewhere, bearer('a long secret'))).statusCode).toBe(200);
    } finally {
      await server.close();
    }
  });

  it('are told to nobody elsewhere where no token is set, an empty one included', async () => {
    for (const metricsToken of [undefined, '']) {
      const server = await testServer(metricsToken === undefined ? {} : { metricsToken });
      const reply = await server.app.inject({
        url: '/metrics',
        remoteAddress: '192.168.7.30',
        headers: bearer(''),
      });
      expect(reply.statusCode).toBe(401);
      await server.close();
    }
  });
});
