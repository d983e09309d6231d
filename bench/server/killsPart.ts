import { copyFileSync, existsSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seededRandom, type SeededRandom } from '../../src/num/seededRandom.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { olderSchemas, schemaOf, writeOlderStore } from './olderStore.ts';
import { runCommand, serve } from './program.ts';

/** A power cut in the midst of whatever writes. */
export const killsPart: NightPart = {
  name: 'kills',
  about:
    'the program killed while it writes, starts, imports, backs up, restores and brings an older store up to date: nothing said is lost',
  run: () => killOften({ each: 84, seed: 1 }),
};

interface Extent {
  /** How often in each situation. */
  readonly each: number;
  readonly seed: number;
}

/** One situation: what it is, and one kill in it. Gives what was lost, in words; none: nothing. */
interface Situation {
  readonly what: string;
  readonly kill: (place: Place) => Promise<readonly string[]>;
  /** What else is to be told of all its kills. */
  readonly tell?: () => Figure;
}

interface Place {
  readonly data: string;
  readonly random: SeededRandom;
  readonly round: number;
}

/** Every situation, one after the other. */
export async function* killOften({ each, seed }: Extent): AsyncGenerator<Figure> {
  const random = seededRandom(seed);
  for (const { what, kill, tell } of [...situations, bringingUpToDate()]) {
    const folder = mkdtempSync(join(tmpdir(), 'throughcut-kills-'));
    const data = join(folder, 'data');
    const lost: string[] = [];
    await begun(data);
    for (let round = 0; round < each; round += 1)
      lost.push(...(await kill({ data, random, round })));
    yield { what: `kills ${what}`, value: each };
    if (tell !== undefined) yield tell();
    yield { what: `lost ${what}`, value: lost.length, atMost: 0, cases: lost.slice(0, 5) };
    rmSync(folder, { recursive: true, force: true });
  }
}

const stock = { material: 'birch plywood', nominalThicknessMm: 3, thicknessReadingsMm: [] };

const post = (base: string, path: string, body: unknown): Promise<number> =>
  fetch(`${base}${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  }).then(
    ({ status }) => status,
    () => 0,
  );

/** A workshop with one sheet. */
const begun = async (data: string): Promise<void> => {
  const server = await serve(data);
  await post(server.base, '/api/studies', { id: 'first', stock });
  await server.kill();
};

interface Exported {
  readonly studies: readonly {
    readonly id: string;
    readonly tallies: readonly { readonly id: string }[];
    readonly events: readonly unknown[];
  }[];
  readonly book: readonly { readonly id: string }[];
}

const nothing: Exported = { studies: [], book: [] };

/** All that is stored, by what the program itself says of it. */
const stored = async (data: string): Promise<Exported | undefined> => {
  const { code, out } = await runCommand(['export'], data);
  return code === 0 ? (JSON.parse(out) as Exported) : undefined;
};

const idsIn = (exported: Exported): readonly string[] =>
  exported.studies.flatMap(({ id, tallies }) => [id, ...tallies.map((tally) => tally.id)]);

const writing: Situation = {
  what: 'while it writes',
  kill: async ({ data, random, round }) => {
    const server = await serve(data);
    const heard: string[] = [];
    const isOver = new AbortController();
    const writer = async (name: string): Promise<void> => {
      for (let n = 0; !isOver.signal.aborted; n += 1) {
        const id = `${String(round)}-${name}-${String(n)}`;
        const counts = { out: 20, hangs: 0, stays: 0, spoilt: 0, partLengthMm: 60 };
        const setting = { powerPct: 30, speedMmPerS: 10, passes: 1 };
        const tally = { id, setting, ...counts };
        if ((await post(server.base, '/api/studies/first/tallies', tally)) === 200) heard.push(id);
      }
    };
    const writers = [writer('a'), writer('b')];
    await new Promise((resolve) => setTimeout(resolve, 20 + random.integer(300)));
    await server.kill();
    isOver.abort();
    await Promise.all(writers);
    const there = new Set(idsIn((await stored(data)) ?? nothing));
    return heard.filter((id) => !there.has(id));
  },
};

const starting: Situation = {
  what: 'while it starts',
  kill: async ({ data, random }) => {
    await runCommand(['serve'], data, { killAfterMs: random.integer(900) });
    return isThere(await stored(data), 'first');
  },
};

const isThere = (exported: Exported | undefined, id: string): readonly string[] => {
  if (exported === undefined) return ['nothing can be read any more'];
  return idsIn(exported).includes(id) ? [] : [id];
};

const importing: Situation = {
  what: 'while it imports',
  kill: async ({ data, random, round }) => {
    const from = await fullExport(data);
    const fresh = `${data}-import-${String(round)}`;
    await runCommand(['import', '--from', from], fresh, {
      killAfterMs: 300 + random.integer(1200),
    });
    const whole = idsIn((await stored(data)) ?? nothing).length;
    const after = await stored(fresh);
    rmSync(fresh, { recursive: true, force: true });
    if (after === undefined) return ['nothing can be read any more'];
    const count = idsIn(after).length;
    return count === 0 || count === whole
      ? []
      : [`${String(count)} of ${String(whole)} were there`];
  },
};

/** An export of a workshop that takes a moment to bring in; made once. */
const fullExport = async (data: string): Promise<string> => {
  const file = `${data}.json`;
  if (existsSync(file)) return file;
  const server = await serve(data);
  for (let n = 0; n < 150; n += 1)
    await post(server.base, '/api/studies', { id: `s${String(n)}`, stock });
  await server.kill();
  await runCommand(['export', '--to', file], data);
  return file;
};

const backingUp: Situation = {
  what: 'while it backs up',
  kill: async ({ data, random, round }) => {
    const to = `${data}-${String(round)}.backup`;
    await runCommand(['backup', '--to', to], data, { killAfterMs: 200 + random.integer(900) });
    const lost = [...isThere(await stored(data), 'first')];
    if (existsSync(to) && statSync(to).size > 0) {
      const other = `${data}-restored`;
      const { code } = await runCommand(['restore', '--from', to], other);
      lost.push(...(code === 0 ? isThere(await stored(other), 'first') : ['a backup in part']));
      rmSync(other, { recursive: true, force: true });
    }
    rmSync(to, { force: true });
    return lost;
  },
};

const restoring: Situation = {
  what: 'while it restores',
  kill: async ({ data, random }) => {
    const kept = `${data}.kept`;
    if (!existsSync(kept)) await runCommand(['backup', '--to', kept], data);
    const from = `${data}.from`;
    copyFileSync(kept, from);
    await runCommand(['restore', '--from', from], data, { killAfterMs: 200 + random.integer(900) });
    return isThere(await stored(data), 'first');
  },
};

/**
 * Every earlier schema in turn, each time a fresh store of it: killed at any moment between its opening and its end, it is
 * opened again, and all that it held is there.
 */
const bringingUpToDate = (): Situation => {
  const schemas = olderSchemas();
  const takesMs = new Map<string, number>();
  let leftOld = 0;
  return {
    what: 'while it brings an older store up to date',
    kill: async ({ data, random, round }) => {
      const schema = schemas[round % schemas.length] ?? '';
      const older = `${data}-older`;
      const file = join(older, 'workshop.sqlite');
      const fresh = (): readonly string[] => {
        rmSync(older, { recursive: true, force: true });
        return writeOlderStore(file, schema);
      };
      if (!takesMs.has(schema)) {
        fresh();
        takesMs.set(schema, await takes(() => runCommand(['export'], older)));
      }
      const ids = fresh();
      const before = schemaOf(file);
      const wholeMs = takesMs.get(schema) ?? 0;
      const killAfterMs = wholeMs * (0.2 + 0.8 * random.uniform());
      await runCommand(['export'], older, { killAfterMs });
      if (schemaOf(file) === before) leftOld += 1;
      const after = await stored(older);
      if (after === undefined) return [`${schema}: nothing can be read any more`];
      const there = new Set([...idsIn(after), ...after.book.map(({ id }) => id)]);
      const without = after.studies.filter(({ events }) => events.length !== 2);
      return [
        ...ids.filter((id) => !there.has(id)),
        ...without.map(({ id }) => `readings of ${id}`),
      ].map((id) => `${schema}: ${id}`);
    },
    tell: () => ({ what: 'of them left at the schema that they had', value: leftOld }),
  };
};

const takes = async (work: () => Promise<unknown>): Promise<number> => {
  const began = performance.now();
  await work();
  return performance.now() - began;
};

const situations: readonly Situation[] = [writing, starting, importing, backingUp, restoring];
