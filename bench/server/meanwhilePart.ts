import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { largeStudy } from '../sums/largeStudies.ts';
import { serve } from './program.ts';

/** How long others wait while the server has hard sums on its hands. */
export const meanwhilePart: NightPart = {
  name: 'meanwhile',
  about: 'health and taps while two hard sums are made, and with nothing to do',
  run: () => askMeanwhile(),
};

const mostMs = 50;
/** Half of the answers are the measure, not the slowest: two threads compute beside it on what may be two cores. */
const median = (all: readonly number[]): number =>
  [...all].sort((a, b) => a - b)[all.length >> 1] ?? NaN;

async function* askMeanwhile(): AsyncGenerator<Figure> {
  const data = mkdtempSync(join(tmpdir(), 'throughcut-meanwhile-'));
  const server = await serve(data);
  const post = (path: string, body: unknown): Promise<Response> =>
    fetch(`${server.base}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  try {
    await post('/api/studies', {
      id: 's1',
      stock: { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3.1] },
    });
    const tap = (id: string): Promise<Response> =>
      post('/api/studies/s1/tallies', {
        id,
        setting: { powerPct: 30, speedMmPerS: 10, passes: 1 },
        ...{ out: 20, hangs: 0, stays: 0, spoilt: 0, partLengthMm: 60 },
      });
    const timed = async (asked: () => Promise<Response>): Promise<number> => {
      const from = performance.now();
      await (await asked()).text();
      return performance.now() - from;
    };
    const round = async (name: string, isOver: (i: number) => boolean) => {
      const [health, taps]: [number[], number[]] = [[], []];
      for (let i = 0; !isOver(i); i += 1) {
        health.push(await timed(() => fetch(`${server.base}/api/health`)));
        taps.push(await timed(() => tap(`${name}-${String(i)}`)));
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
      return { health, taps };
    };
    await round('warm', (i) => i >= 5);
    const idle = await round('idle', (i) => i >= 50);
    const { stock, machine, cells } = largeStudy('contradictory cells', 5000, 1);
    let sumsLeft = 2;
    const began = performance.now();
    const sums = [0, 1].map(async () => {
      const reply = await post('/api/calc/fit', { version: 1, stock, machine, cells });
      await reply.text();
      sumsLeft -= 1;
    });
    const busy = await round('busy', () => sumsLeft === 0);
    await Promise.all(sums);
    const tookS = (performance.now() - began) / 1000;
    yield { what: 'health with nothing to do, median', value: median(idle.health), unit: 'ms' };
    yield { what: 'tap with nothing to do, median', value: median(idle.taps), unit: 'ms' };
    yield { what: 'the two sums', value: tookS, unit: 's', atMost: 25 };
    yield { what: 'asked meanwhile', value: busy.taps.length, atLeast: 10 };
    yield { what: 'health, median', value: median(busy.health), unit: 'ms', atMost: mostMs };
    yield { what: 'tap, median', value: median(busy.taps), unit: 'ms', atMost: mostMs };
    yield { what: 'slowest tap', value: Math.max(...busy.taps), unit: 'ms' };
  } finally {
    await server.kill();
    rmSync(data, { recursive: true, force: true });
  }
}
