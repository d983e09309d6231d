import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql, type RawBuilder } from 'kysely';
import { searchBook } from '../../src/app/book/searchBook.ts';
import { listStudies } from '../../src/app/sheet/listStudies.ts';
import { modelHere } from '../../src/app/sums/modelHere.ts';
import { home } from '../../src/app/workshop/home.ts';
import { soughtIn } from '../../src/core/search/sought.ts';
import { rememberingKept } from '../../src/host/rememberingKept.ts';
import type { StorePlace } from '../../src/host/storePlace.ts';
import type { Engine } from '../../src/store/engine.ts';
import { kyselyStore } from '../../src/store/kyselyStore.ts';
import { openEngine } from '../../src/store/openStore.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { serve } from '../server/program.ts';
import { fillMany, manyCellsSheet, type ManySheets } from './manySheets.ts';
import { letPhonesIn, phonesAtWork } from './phonesAtWork.ts';

/** A million cells in 40,000 cards, in the embedded engine; and in a database where THROUGHCUT_SCALE_DATABASE names an empty one. */
export const scalePart: NightPart = {
  name: 'scale',
  about:
    'a million cells in 40,000 cards and 20,000 kept settings: screens against a bare SELECT of what they show, memory, and 200 phones that grade 50 times a second (THROUGHCUT_SCALE=0.1: a tenth of the cells; THROUGHCUT_SCALE_SECONDS; THROUGHCUT_SCALE_DATABASE=postgres://…: there too)',
  run: () => {
    const share = Number(process.env['THROUGHCUT_SCALE'] ?? '1');
    return measureScale({
      sheets: Math.round(8000 * share),
      cardsEach: 5,
      cellsEach: 25,
      kept: Math.round(20_000 * share),
      seconds: Number(process.env['THROUGHCUT_SCALE_SECONDS'] ?? '300'),
      rounds: 200,
    });
  },
};

interface Extent extends ManySheets {
  readonly seconds: number;
  readonly rounds: number;
}

const at = '2031-06-01T00:00:00.000Z';
const pageOf = { sheets: 21, book: 25 } as const;
const timesAtMost = 3;

/** All figures, on each engine that there is. */
export async function* measureScale(extent: Extent): AsyncGenerator<Figure> {
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-scale-'));
  try {
    yield* measureAt(
      'SQLite',
      { kind: 'file', file: join(folder, 'workshop.sqlite') },
      50,
      folder,
      extent,
    );
    const url = process.env['THROUGHCUT_SCALE_DATABASE'] ?? '';
    if (url !== '') yield* measureAt('PostgreSQL', { kind: 'database', url }, 60, folder, extent);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function* measureAt(
  name: string,
  place: StorePlace,
  p95AtMostMs: number,
  folder: string,
  extent: Extent,
): AsyncGenerator<Figure> {
  const engine = await openEngine(place, { openedAt: at });
  const store = kyselyStore(engine);
  const began = performance.now();
  await fillMany(store, extent);
  yield { what: `${name}: filled in`, value: (performance.now() - began) / 1000, unit: 's' };
  const cells = extent.sheets * extent.cardsEach * extent.cellsEach;
  yield { what: `${name}: cells`, value: await countOf(engine), atLeast: cells };
  if (place.kind === 'database') await sql`analyze`.execute(engine.db);
  for (const { what, ask, bare } of screensOf(engine, store, extent)) {
    const [asked, plain] = await timed(extent.rounds, bare === undefined ? [ask] : [ask, bare]);
    yield {
      what: `${name}: ${what}, 95 in 100 within`,
      value: quantile(asked, 0.95),
      unit: 'ms',
      atMost: p95AtMostMs,
    };
    if (bare !== undefined)
      yield {
        what: `${name}: ${what}, of a bare SELECT`,
        value: quantile(asked, 0.5) / quantile(plain, 0.5),
        atMost: timesAtMost,
      };
  }
  const tokens = await letPhonesIn(store, 200, new Date().toISOString());
  await store.close();
  yield* measureLoad(name, place, folder, { ...extent, tokens });
}

const countOf = async ({ db }: Engine): Promise<number> => {
  const { rows } = await sql<{
    readonly n: number | string;
  }>`select count(*) as n from reading_event`.execute(db);
  return Number(rows[0]?.n ?? 0);
};

interface Screen {
  readonly what: string;
  readonly ask: (round: number) => Promise<unknown>;
  /** The same rows and their number, by statements of whoever wants just them. Absent: it is no list of rows. */
  readonly bare?: (round: number) => Promise<unknown>;
}

const screensOf = (
  { db }: Engine,
  store: ReturnType<typeof kyselyStore>,
  { sheets }: Extent,
): readonly Screen[] => {
  const one = (round: number): string => `sheet-${String((round * 7919) % sheets)}`;
  // As behind a server: how a kept setting stands is worked out once.
  const model = rememberingKept(() => modelHere)(new AbortController().signal);
  const sought = soughtIn('mdf delivery 7');
  const like = sql`found_by like '%mdf%' and found_by like '%delivery%' and found_by like '%7%'`;
  const sheetRows = (where: RawBuilder<unknown>) =>
    sql<{
      readonly id: string;
    }>`select * from study where ${where} order by touched_no desc limit ${sql.lit(pageOf.sheets)}`;
  const bookRows = (where: RawBuilder<unknown>) =>
    sql`select * from proven_setting where ${where} order by kept_no desc limit ${sql.lit(pageOf.book)}`;
  const all = sql`1 = 1`;
  const bareSheet = async (round: number): Promise<void> => {
    const id = one(round);
    await sql`select * from study where id = ${id}`.execute(db);
    for (const table of ['card', 'reading_event'])
      await sql`select * from ${sql.table(table)} where study_id = ${id} order by position`.execute(
        db,
      );
    await sql`select * from tally where study_id = ${id}`.execute(db);
  };
  const bareSheets = async (where: RawBuilder<unknown>): Promise<void> => {
    await sql`select count(*) from study where ${where}`.execute(db);
    const { rows } = await sheetRows(where).execute(db);
    const ids = sql.join(rows.map(({ id }) => id));
    await sql`select study_id, code from card where study_id in (${ids}) order by position`.execute(
      db,
    );
    await sql`select study_id, count(*) from tally where study_id in (${ids}) group by study_id`.execute(
      db,
    );
  };
  const bareBook = async (where: RawBuilder<unknown>): Promise<void> => {
    await sql`select count(*) from proven_setting where ${where}`.execute(db);
    await bookRows(where).execute(db);
  };
  return [
    {
      what: 'a sheet with five cards',
      ask: (round) => store.read((session) => session.study(one(round))),
      bare: bareSheet,
    },
    {
      what: 'a page of sheets',
      ask: () => listStudies({ store }, { text: '', limit: pageOf.sheets }),
      bare: () => bareSheets(all),
    },
    {
      what: 'sheets that are searched',
      ask: () => listStudies({ store }, { text: 'mdf delivery 7', limit: pageOf.sheets }),
      bare: () => bareSheets(like),
    },
    {
      what: 'rows of the book',
      ask: () => store.read((session) => session.listEntries({ limit: pageOf.book })),
      bare: () => bareBook(all),
    },
    {
      what: 'rows of the book, searched',
      ask: () => store.read((session) => session.listEntries({ sought, limit: pageOf.book })),
      bare: () => bareBook(like),
    },
    { what: 'the first screen', ask: () => home({ store, model }) },
    {
      what: 'a page of the book',
      ask: () => searchBook({ store, model }, '', { limit: pageOf.book }),
    },
  ];
};

/** A server runs for weeks: what it does often was compiled long ago. So many rounds come before the first that counts. */
const warmingRounds = 150;

/** What each took, in turns, so that what slows the computer down slows all of them. */
const timed = async (
  rounds: number,
  works: readonly Screen['ask'][],
): Promise<readonly (readonly number[])[]> => {
  const took: number[][] = works.map(() => []);
  for (let round = -warmingRounds; round < rounds; round += 1)
    for (const [i, work] of works.entries()) {
      const began = performance.now();
      await work(round + warmingRounds);
      if (round >= 0) took[i]?.push(performance.now() - began);
    }
  return took;
};

const quantile = (values: readonly number[] = [], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

async function* measureLoad(
  name: string,
  place: StorePlace,
  folder: string,
  {
    sheets,
    cardsEach,
    cellsEach,
    seconds,
    tokens,
  }: Extent & { readonly tokens: readonly string[] },
): AsyncGenerator<Figure> {
  const address = ownAddress();
  const server = await serve(folder, {
    ...(address === undefined ? {} : { lan: true }),
    environment: place.kind === 'file' ? {} : { THROUGHCUT_DATABASE: place.url },
  });
  try {
    const base = address === undefined ? server.base : server.base.replace('127.0.0.1', address);
    const before = await cpuSeconds(server.base);
    const { tookMs, errors } = await phonesAtWork({
      base,
      tokens: address === undefined ? [] : tokens,
      perSecond: 50,
      seconds,
      gradeAt: (n) => {
        const sheet = manyCellsSheet((n * 31) % sheets, { cardsEach, cellsEach });
        const event = sheet.events[n % sheet.events.length];
        if (event === undefined) throw new Error('a sheet without readings');
        return { studyId: sheet.id, event: { ...event, id: `load-${String(n)}`, at } };
      },
    });
    const from = address === undefined ? 'tabs at the desk' : 'phones';
    yield { what: `${name}: grades by 200 ${from}`, value: tookMs.length, atLeast: 50 * seconds };
    yield { what: `${name}: errors`, value: errors.length, atMost: 0, cases: errors.slice(0, 5) };
    yield {
      what: `${name}: a grade, half of them within`,
      value: quantile(tookMs, 0.5),
      unit: 'ms',
    };
    yield {
      what: `${name}: a grade, 99 in 100 within`,
      value: quantile(tookMs, 0.99),
      unit: 'ms',
      atMost: 150,
    };
    const cpuMs = ((await cpuSeconds(server.base)) - before) * 1000;
    yield {
      what: `${name}: processor of the server, a grade`,
      value: cpuMs / tookMs.length,
      unit: 'ms',
    };
    yield {
      what: `${name}: memory of the server`,
      value: residentMb(server.pid),
      unit: 'MB',
      atMost: 250,
    };
  } finally {
    await server.kill();
  }
}

/** An address of this computer in its network; a phone asks there. */
const ownAddress = (): string | undefined =>
  Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .find(({ family, internal }) => family === 'IPv4' && !internal)?.address;

/** Where the system tells; not a number elsewhere. */
const residentMb = (pid: number): number => {
  try {
    const [, kB] = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${String(pid)}/status`, 'utf8')) ?? [];
    return Number(kB) / 1024;
  } catch {
    return Number.NaN;
  }
};

/** Of the server so far, as it tells itself. */
const cpuSeconds = async (base: string): Promise<number> => {
  const text = await (await fetch(`${base}/metrics`)).text();
  return Number(/^process_cpu_seconds_total (\S+)$/m.exec(text)?.[1]);
};
