import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { exportAll } from '../../src/app/workshop/exportAll.ts';
import { home } from '../../src/app/workshop/home.ts';
import { importAll } from '../../src/app/workshop/importAll.ts';
import { listStudies } from '../../src/app/sheet/listStudies.ts';
import { modelHere } from '../../src/app/sums/modelHere.ts';
import type { AskingPorts, Store } from '../../src/app/ports/ports.ts';
import { recordReadings } from '../../src/app/sheet/recordReadings.ts';
import { searchBook } from '../../src/app/book/searchBook.ts';
import { done } from '../../src/core/problem.ts';
import { parseExportFile } from '../../src/formats/exportFile.ts';
import { openSqliteStore } from '../../src/store/sqliteStore.ts';
import type { Figure, NightPart } from '../night/nightPart.ts';
import { grow, grownSheet, readingsOf, type Grown } from './grownStore.ts';

/** A workshop of years. */
export const growthPart: NightPart = {
  name: 'growth',
  about:
    '2,000 sheets and 5,000 kept settings against a bare SELECT of the same lists, and against a small workshop; a sheet of 20,000 readings; 100,000 out and in again',
  run: () =>
    measureGrowth({ sheets: 2000, kept: 5000, events: 20_000, roundTrip: 100_000, rounds: 15 }),
};

interface Extent extends Grown {
  /** Readings of the one sheet that has many. */
  readonly events: number;
  /** Readings that are exported and read in again. */
  readonly roundTrip: number;
  /** Each figure is the middle one of so many. */
  readonly rounds: number;
}

/** As many as the page asks for at first. */
const pageOf = { sheets: 21, book: 25 } as const;

/** A screen takes no more than so many times a bare SELECT of the rows that it looks through. */
const timesAtMost = 3;

/** All figures of a workshop that has grown. */
export async function* measureGrowth(extent: Extent): AsyncGenerator<Figure> {
  const folder = mkdtempSync(join(tmpdir(), 'throughcut-grown-'));
  try {
    yield* measureLists(folder, extent);
    yield* measureTaps(folder, extent);
    yield* measureRoundTrip(folder, extent);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function* measureLists(
  folder: string,
  { sheets, kept, rounds }: Extent,
): AsyncGenerator<Figure> {
  const small = await begun(join(folder, 'small.sqlite'), { sheets: 40, kept: 100 });
  const file = join(folder, 'grown.sqlite');
  const grown = await begun(file, { sheets, kept });
  const db = new Database(file, { readonly: true });
  const all = (query: string) => () => db.prepare(query).all();
  const bareSheets = all('select * from study order by touched_no desc');
  const bareBook = all('select * from proven_setting order by kept_no desc');
  const first = ({ store }: Place) => home({ store, model: modelHere });
  const page =
    (text = '') =>
    ({ store }: Place) =>
      listStudies({ store }, { text, limit: pageOf.sheets });
  const book =
    (text = '') =>
    ({ store }: Place) =>
      searchBook({ store, model: modelHere }, text, { limit: pageOf.book });
  const lists: readonly List[] = [
    { what: 'the first screen', ask: first, bare: bareSheets, both: true },
    { what: 'a page of sheets', ask: page(), bare: bareSheets, both: true },
    { what: 'a page of sheets, searched', ask: page('mdf 3 mm delivery 7'), bare: bareSheets },
    { what: 'a page of the book', ask: book(), bare: bareBook, both: true },
    { what: 'a page of the book, searched', ask: book('mdf 3 mm delivery 7'), bare: bareBook },
  ];
  for (const { what, ask, bare, both } of lists) {
    const [bareMs, grownMs, smallMs] = await middleMs(rounds, [
      bare,
      () => ask(grown),
      () => ask(small),
    ]);
    yield { what, value: grownMs, unit: 'ms' };
    yield { what: `${what}, of a bare SELECT`, value: grownMs / bareMs, atMost: timesAtMost };
    if (both === true)
      yield { what: `${what}, of a small workshop`, value: grownMs / smallMs, atMost: timesAtMost };
  }
  db.close();
  await small.store.close();
  await grown.store.close();
}

interface List {
  readonly what: string;
  readonly ask: (place: Place) => Promise<unknown>;
  readonly bare: () => unknown;
  /** Whether it shows as much in a small workshop, so that the two can be held against each other. */
  readonly both?: true;
}

async function* measureTaps(folder: string, { events, rounds }: Extent): AsyncGenerator<Figure> {
  const { ports, store } = await begun(join(folder, 'taps.sqlite'), { sheets: 2, kept: 0 });
  await store.change(async (session) => {
    await session.insertStudy(grownSheet(7, events), ports.clock.now());
    return done(undefined);
  });
  let taps = 0;
  const tapOn = (id: string) => async () => {
    taps += 1;
    const card = (await store.read((session) => session.cardsOf(id)))?.cards[0];
    return recordReadings(ports, id, readingsOf(card?.code ?? '', 1, 1_000_000 + taps));
  };
  const [largeMs, smallMs] = await middleMs(rounds, [tapOn('sheet-7'), tapOn('sheet-1')]);
  const stored = await store.read((session) => session.study('sheet-7'));
  yield {
    what: 'readings of the large sheet',
    value: stored?.study.events.length ?? 0,
    atLeast: events + rounds,
  };
  yield { what: 'a tap on it', value: largeMs, unit: 'ms' };
  yield {
    what: 'a tap on it, of one on a small sheet',
    value: largeMs / smallMs,
    atMost: timesAtMost,
  };
  await store.close();
}

async function* measureRoundTrip(folder: string, { roundTrip }: Extent): AsyncGenerator<Figure> {
  const from = await begun(join(folder, 'from.sqlite'), { sheets: 1, kept: 0 });
  const to = await begun(join(folder, 'to.sqlite'), { sheets: 0, kept: 0 });
  await from.store.change(async (session) => {
    await session.insertStudy(grownSheet(9, roundTrip), from.ports.clock.now());
    return done(undefined);
  });
  const began = performance.now();
  const text = JSON.stringify(await exportAll(from.ports));
  const out = performance.now();
  const read = parseExportFile(text);
  if (!read.ok) throw new Error(`what was exported is refused: ${read.problem.code}`);
  const imported = await importAll(to.ports, read.value);
  const back = performance.now();
  if (!imported.ok) throw new Error(`it is not taken in: ${imported.problem.code}`);
  const came = await to.store.read((session) => session.study('sheet-9'));
  const went = await from.store.read((session) => session.study('sheet-9'));
  const isSame = JSON.stringify(came?.study.events) === JSON.stringify(went?.study.events);
  yield { what: 'readings out and in again', value: isSame ? roundTrip : 0, atLeast: roundTrip };
  yield { what: 'their file', value: text.length / 1e6, unit: 'MB' };
  yield { what: 'out', value: (out - began) / 1000, unit: 's', atMost: 60 };
  yield { what: 'in', value: (back - out) / 1000, unit: 's', atMost: 60 };
  await from.store.close();
  await to.store.close();
}

interface Place {
  readonly store: Store;
  readonly ports: AskingPorts;
}

const begun = async (file: string, size: Grown): Promise<Place> => {
  const now = (): string => new Date().toISOString();
  const store = await openSqliteStore({ file, openedAt: now() });
  await grow(store, size);
  const ids = { newId: () => crypto.randomUUID(), newCode: () => 'ZZZZ' };
  return { store, ports: { store, clock: { now }, ids, model: modelHere } };
};

/** The middle time of each, taken in turns: what slows the computer meanwhile slows all of them. */
const middleMs = async (
  rounds: number,
  asked: readonly (() => unknown)[],
): Promise<readonly [number, number, number]> => {
  const times = asked.map((): number[] => []);
  for (let round = 0; round <= rounds; round += 1)
    for (const [i, ask] of asked.entries()) {
      const began = performance.now();
      await ask();
      // The first round only warms up.
      if (round > 0) times[i]?.push(performance.now() - began);
    }
  const [a = NaN, b = NaN, c = NaN] = times.map(
    (all) => all.sort((x, y) => x - y)[all.length >> 1] ?? NaN,
  );
  return [a, b, c];
};
