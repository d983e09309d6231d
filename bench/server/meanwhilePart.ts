import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { kyselyStore } from '../../src/store/kyselyStore.ts';
import { openSqliteEngine } from '../../src/store/sqliteStore.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { fillMany } from '../scale/manySheets.ts';
import { largeStudy } from '../sums/largeStudies.ts';
import { serve, type Served } from './program.ts';

/** How long others wait while the server has hard sums on its hands, or gives away all that a grown workshop has. */
export const meanwhilePart: NightPart = {
  name: 'meanwhile',
  about:
    'health and taps while two hard sums are made, while the book, all cells or everything of a grown workshop goes out, and with nothing to do',
  run: () => askMeanwhile(),
};

const mostMs = 50;
/** A grown workshop: 250,000 cells. */
const grown = { sheets: 2000, cardsEach: 5, cellsEach: 25, kept: 5000 };
const openedAt = '2031-06-01T00:00:00.000Z';

/** Half of the answers are the measure, not the slowest: two threads compute beside it on what may be two cores. */
const median = (all: readonly number[]): number =>
  [...all].sort((a, b) => a - b)[all.length >> 1] ?? NaN;

async function* askMeanwhile(): AsyncGenerator<Figure> {
  const data = mkdtempSync(join(tmpdir(), 'throughcut-meanwhile-'));
  try {
    yield* atWorkOn(join(data, 'new'), whileSumsAreMade);
    const engine = await openSqliteEngine({
      file: join(data, 'grown', 'workshop.sqlite'),
      openedAt,
    });
    const store = kyselyStore(engine);
    await fillMany(store, grown);
    await store.close();
    yield* atWorkOn(join(data, 'grown'), whileAllGoesOut);
  } finally {
    rmSync(data, { recursive: true, force: true });
  }
}

async function* atWorkOn(
  data: string,
  measure: (asking: Asking) => AsyncGenerator<Figure>,
): AsyncGenerator<Figure> {
  const server = await serve(data);
  try {
    const asking = askingOf(server);
    await asking.begin();
    await asking.round((i) => i >= 5);
    yield* measure(asking);
  } finally {
    await server.kill();
  }
}

interface Asking {
  readonly begin: () => Promise<unknown>;
  readonly get: (path: string) => Promise<Response>;
  readonly post: (path: string, body: unknown) => Promise<Response>;
  /** Asks for health and counts a part, in turn, until it is over. */
  readonly round: (isOver: (i: number) => boolean) => Promise<Waited>;
}

/** How long each answer took, in milliseconds. */
interface Waited {
  readonly health: readonly number[];
  readonly taps: readonly number[];
}

const askingOf = ({ base }: Served): Asking => {
  const get = (path: string): Promise<Response> => fetch(`${base}${path}`);
  const post = (path: string, body: unknown): Promise<Response> =>
    fetch(`${base}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  let taps = 0;
  const tap = (): Promise<Response> =>
    post('/api/studies/s1/tallies', {
      id: `tap-${String((taps += 1))}`,
      setting: { powerPct: 30, speedMmPerS: 10, passes: 1 },
      ...{ out: 20, hangs: 0, stays: 0, spoilt: 0, partLengthMm: 60 },
    });
  const timed = async (asked: () => Promise<Response>): Promise<number> => {
    const from = performance.now();
    const reply = await asked();
    await reply.text();
    if (!reply.ok) throw new Error(`${reply.url} answered ${String(reply.status)}`);
    return performance.now() - from;
  };
  return {
    begin: () =>
      post('/api/studies', {
        id: 's1',
        stock: { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [3.1] },
      }),
    get,
    post,
    round: async (isOver) => {
      const waited: { readonly health: number[]; readonly taps: number[] } = {
        health: [],
        taps: [],
      };
      for (let i = 0; !isOver(i); i += 1) {
        waited.health.push(await timed(() => get('/api/health')));
        waited.taps.push(await timed(tap));
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
      return waited;
    },
  };
};

async function* whileSumsAreMade({ post, round }: Asking): AsyncGenerator<Figure> {
  const idle = await round((i) => i >= 50);
  const { stock, machine, cells } = largeStudy('contradictory cells', 5000, 1);
  let sumsLeft = 2;
  const began = performance.now();
  const sums = [0, 1].map(async () => {
    const reply = await post('/api/calc/fit', { version: 1, stock, machine, cells });
    await reply.text();
    sumsLeft -= 1;
  });
  const busy = await round(() => sumsLeft === 0);
  await Promise.all(sums);
  const tookS = (performance.now() - began) / 1000;
  yield { what: 'health with nothing to do, median', value: median(idle.health), unit: 'ms' };
  yield { what: 'tap with nothing to do, median', value: median(idle.taps), unit: 'ms' };
  yield { what: 'the two sums', value: tookS, unit: 's', atMost: 25 };
  yield* waitedFor('two hard sums', busy);
}

/** What is asked for, and where. */
const goingOut = [
  ['the book as a table', '/api/export/book.csv'],
  ['all cells as a table', '/api/export/cells.csv'],
  ['everything', '/api/export'],
] as const;

async function* whileAllGoesOut({ get, round }: Asking): AsyncGenerator<Figure> {
  for (const [name, path] of goingOut) {
    let isOver = false;
    const began = performance.now();
    const sent = get(path).then(async (reply) => {
      await reply.text();
      isOver = true;
      return reply.ok;
    });
    const busy = await round(() => isOver);
    if (!(await sent)) throw new Error(`${path} was refused`);
    yield { what: `${name} goes out`, value: (performance.now() - began) / 1000, unit: 's' };
    yield* waitedFor(name, busy);
  }
}

function* waitedFor(meanwhile: string, { health, taps }: Waited): Generator<Figure> {
  const named = (what: string): string => `${what} (${meanwhile})`;
  yield { what: named('asked meanwhile'), value: taps.length, atLeast: 10 };
  yield { what: named('health, median'), value: median(health), unit: 'ms', atMost: mostMs };
  yield { what: named('tap, median'), value: median(taps), unit: 'ms', atMost: mostMs };
  yield { what: named('slowest health'), value: Math.max(...health), unit: 'ms' };
  yield { what: named('slowest tap'), value: Math.max(...taps), unit: 'ms' };
}
