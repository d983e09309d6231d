import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seededRandom } from '../../src/num/seededRandom.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { operationsIn, requestOf, type Described } from './operations.ts';
import { serve } from './program.ts';

/** What is asked of a server by its own description, well-formed and odd. */
export const requestsPart: NightPart = {
  name: 'requests',
  about: 'requests made from the server’s own description: none breaks it, none takes long',
  run: () => askManyThings({ requests: 20_000, seed: 1 }),
};

interface Extent {
  readonly requests: number;
  readonly seed: number;
}

/** So many at once: about what a desk and some phones ask. */
const atOnce = 4;
/** The requests, and what came of them. */
export async function* askManyThings({ requests, seed }: Extent): AsyncGenerator<Figure> {
  const data = mkdtempSync(join(tmpdir(), 'throughcut-requests-'));
  const server = await serve(data);
  try {
    const operations = operationsIn(
      (await (await fetch(`${server.base}/api/openapi.json`)).json()) as Described,
    );
    await fetch(`${server.base}/api/example`, { method: 'POST' });
    const random = seededRandom(seed);
    const ids = ['example-plywood', 'example-kept', 'example-machine', 'LARK', 'default'];
    const broken: string[] = [];
    let [answered, refused, slowestMs, slowest] = [0, 0, 0, ''];
    const askOne = async (): Promise<void> => {
      const one = operations[random.integer(operations.length)];
      if (one === undefined) return;
      const { address, body } = requestOf(one, random, ids);
      const began = performance.now();
      const reply = await fetch(`${server.base}${address}`, {
        method: one.method,
        signal: AbortSignal.timeout(60_000),
        ...(body === undefined
          ? {}
          : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
      }).catch((error: unknown) => String(error));
      const text = typeof reply === 'string' ? reply : await reply.text();
      const ms = performance.now() - began;
      const said = `${one.method} ${address} ${JSON.stringify(body ?? null).slice(0, 600)}`;
      if (ms > slowestMs) [slowestMs, slowest] = [ms, said];
      if (typeof reply === 'string' || reply.status >= 500) broken.push(`${said}: ${text}`);
      else if (reply.status >= 400) refused += 1;
      else {
        answered += 1;
        for (const [, id = ''] of text.matchAll(/"id":"([^"]{1,60})"/g))
          if (ids.length < 400) ids.push(id);
      }
    };
    let left = requests;
    const asker = async (): Promise<void> => {
      while (left > 0) {
        left -= 1;
        await askOne();
      }
    };
    await Promise.all(Array.from({ length: atOnce }, asker));
    yield { what: 'requests', value: requests };
    yield { what: 'of them answered', value: answered, atLeast: requests / 20 };
    yield { what: 'of them refused in words', value: refused };
    yield {
      what: 'that broke the server, or got no answer',
      value: broken.length,
      atMost: 0,
      cases: broken.slice(0, 10),
    };
    yield { what: 'slowest', value: slowestMs / 1000, unit: 's', atMost: 5, cases: [slowest] };
  } finally {
    await server.kill();
    rmSync(data, { recursive: true, force: true });
  }
}
