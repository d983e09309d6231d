import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from './program.ts';
import { runServer, type RunningServer } from './server.ts';

/** Cells that contradict each other: no order of speeds explains who came out. */
const contradictory = (count: number): object => ({
  version: 1,
  machine: { maxPowerPct: 80, speedRangeMmPerS: [1, 100] },
  stock: { material: 'birch plywood', thicknessMm: 3.1 },
  cells: Array.from({ length: count }, (_, i) => ({
    powerPct: 20 + ((i * 7) % 50),
    speedMmPerS: 5 + ((i * 13) % 60),
    sheet: `A-${String(i % 7)}`,
    batch: `B-${String(i % 11)}`,
    grade: ['out', 'stays', 'hangs'][(i * 31) % 3],
  })),
});

describe('a server with a hard sum on its hands', () => {
  let server: RunningServer;
  beforeAll(async () => {
    server = await runServer();
  });
  afterAll(async () => {
    await server.remove();
  });
  const post = (path: string, body: unknown): Promise<Response> =>
    fetch(`${server.base}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });

  it('answers it or says why not, and everybody else meanwhile', async () => {
    const started = await post('/api/studies', {
      stock: { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3.1] },
    });
    expect(started.status).toBe(200);
    const { study } = (await started.json()) as { study: { id: string } };
    const tally = (id: string) => ({
      id,
      setting: { powerPct: 30, speedMmPerS: 10, passes: 1 },
      out: 20,
      hangs: 0,
      stays: 0,
      spoilt: 0,
      partLengthMm: 60,
    });
    await post(`/api/studies/${study.id}/tallies`, tally('warm'));

    let answered = 0;
    const hard = [0, 1].map(async () => {
      const reply = await post('/api/calc/fit', contradictory(5000));
      answered += 1;
      return reply;
    });
    await begun();
    for (let i = 0; i < 5; i += 1) {
      expect((await fetch(`${server.base}/api/health`)).status).toBe(200);
      const tapped = await post(`/api/studies/${study.id}/tallies`, tally(`tap-${String(i)}`));
      expect(tapped.status).toBe(200);
    }
    // Asked after them, answered before them: nobody waited for a sum.
    expect(answered).toBe(0);
    for (const reply of await Promise.all(hard)) {
      const body = (await reply.json()) as { error?: { code: string } };
      if (reply.status !== 200) expect(body.error?.code).toBe('sum-took-too-long');
    }
  });

  it('stops when it is told to, and not when the sum is done', async () => {
    const hard = post('/api/calc/fit', contradictory(5000)).then(
      ({ status }) => status,
      () => 'cut off',
    );
    await begun();
    await server.stop();
    // Given up with words, or cut off: never made to its end.
    expect(['cut off', 408]).toContain(await hard);
  });
});

/** Long enough for a request to have come, much shorter than its sum. */
const begun = (): Promise<unknown> => new Promise((resolve) => setTimeout(resolve, 500));

describe('a study far from anything that is expected', () => {
  it('gets an answer or a refusal in words', async () => {
    const odd = {
      version: 1,
      machine: { maxPowerPct: 100, speedRangeMmPerS: [1, 500] },
      stock: { material: 'birch plywood', thicknessMm: 3 },
      cells: [40, 60, 80].map((speedMmPerS) => ({ powerPct: 50, speedMmPerS, grade: 'out' })),
      tallies: [
        { powerPct: 50, speedMmPerS: 210, out: 4264, hangs: 5, stays: 1173, partLengthMm: 60 },
      ],
    };
    const ran = await runProgram(['calc', 'fit'], { input: JSON.stringify(odd) });
    expect(ran.err).toBe('');
    expect([0, 2]).toContain(ran.code);
    const said = JSON.parse(ran.out) as { recommended?: unknown; error?: { message: string } };
    expect('recommended' in said || (said.error?.message.length ?? 0) > 10).toBe(true);
  });
});
