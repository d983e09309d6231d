import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { asNobody } from '../../test/asNobody.ts';
import {
  sampleBedTest,
  sampleCard,
  sampleEntry,
  sampleEvent,
  sampleFocusTest,
  sampleMachine,
  sampleMetering,
  sampleOrder,
  sampleStudy,
  sampleTally,
  sampleTime,
} from '../../test/samples/studies.ts';
import type { Session } from '../app/ports/ports.ts';
import { done } from '../core/problem.ts';
import { migrations } from './migrations/all.ts';
import { openStore } from './openStore.ts';
import { openSqliteStore, openSqliteToRead } from './sqliteStore.ts';
import { StoreError } from './storeError.ts';

/** Made of the only study that those programs kept. */
const machineId = 'machine-s1';
const hasOrder = (name: string): boolean => !/-[1-6]\.sql$/.test(name);
const hasSettingPhoto = (name: string): boolean => !/-(?:[1-9]|1[0-2])\.sql$/.test(name);
const hasChange = (name: string): boolean => !/-(?:[1-9]|1[0-3])\.sql$/.test(name);
const hasPhone = (name: string): boolean => !/-[1-9]\.sql$/.test(name);
const hasRole = (name: string): boolean => !/-(?:[1-9]|1[0-4])\.sql$/.test(name);
const hasPhoto = (name: string): boolean => !/-[1-8]\.sql$/.test(name);
const hasBedTest = (name: string): boolean => !/-[12]\.sql$/.test(name);

const fixtures = fileURLToPath(new URL('../../test/conformance/fixtures/', import.meta.url));

let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-sqlite-'));
  file = join(folder, 'workshop.sqlite');
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const open = (over: Partial<Parameters<typeof openSqliteStore>[0]> = {}) =>
  openSqliteStore({ file, openedAt: sampleTime, ...over });

/** The code of the `StoreError` that the work ends in. */
const codeOf = async (work: Promise<unknown>): Promise<string> => {
  const thrown: unknown = await work.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  if (!(thrown instanceof StoreError)) throw thrown;
  return thrown.problem.code;
};

describe('the SQLite store', () => {
  it.each(readdirSync(fixtures))('opens what an earlier program kept: %s', async (name) => {
    const before = new Database(file);
    before.exec(readFileSync(join(fixtures, name), 'utf8'));
    before.close();
    const store = await open();
    await store.read(async (session) => {
      const tally = sampleTally('t1', { provenSettingId: 'b1' });
      expect((await session.study('s1'))?.study).toEqual(
        sampleStudy('s1', {
          machineId,
          habit: { powerPct: 30, speedMmPerS: 14, comesOut: 'nearly' },
          cards: [sampleCard()],
          events: [sampleEvent('e1'), sampleEvent('e2', { cell: 'B1', grade: 'stays' })],
          ...(hasOrder(name) ? { orders: [sampleOrder('o1')] } : {}),
          tallies: [tally],
        }),
      );
      const { holdsFor } = sampleEntry('b1');
      expect(await session.entry('b1')).toEqual(
        sampleEntry('b1', { holdsFor: { ...holdsFor, machineId } }),
      );
      expect(await session.talliesOfEntry('b1')).toEqual([tally]);
      const meterings = name === 'version-1.sql' ? [] : [sampleMetering('m1', { machineId })];
      expect(await session.machineTests('metering')).toEqual(meterings);
      const focusTests = name === 'version-1.sql' ? [] : [sampleFocusTest('f1', { machineId })];
      expect(await session.machineTests('focus-test')).toEqual(focusTests);
      const bedTests = hasBedTest(name) ? [sampleBedTest('c1', { machineId })] : [];
      expect(await session.machineTests('bed-test')).toEqual(bedTests);
      const photo = await session.photo({ studyId: 's1', code: 'K7QX' }, 'front');
      expect(photo && [...photo.jpeg]).toEqual(
        hasPhoto(name) ? [0xff, 0xd8, 0xff, 0xd9] : undefined,
      );
      const ofSetting = await session.settingPhoto('b1', 'engrave');
      expect(ofSetting && [...ofSetting.jpeg]).toEqual(
        hasSettingPhoto(name) ? [0xff, 0xd8, 0xff, 0xd9] : undefined,
      );
      const { found } = await session.settingChanges({ limit: 9 });
      expect(found.map(({ settingId, by }) => [settingId, by])).toEqual(
        hasChange(name) ? [['b0', 'bench']] : [],
      );
    });
    await store.close();
  });

  it.each(readdirSync(fixtures))('lets a phone go on doing all that it could: %s', async (name) => {
    const before = new Database(file);
    before.exec(readFileSync(join(fixtures, name), 'utf8'));
    before.close();
    const store = await openStore({ kind: 'file', file }, sampleTime);
    const phones = await store.phones.read((session) => session.phones());
    expect(phones.map(({ name: called, role }) => [called, role])).toEqual(
      hasPhone(name) ? [['bench', hasRole(name) ? 'reads-and-counts' : 'runs-the-place']] : [],
    );
    await store.close();
  });

  it('lets go after a day what went with a setting that was taken out', async () => {
    const store = await open();
    const take = (id: string, at: string) =>
      store.change(async (session) => {
        const before = sampleEntry(id);
        await session.insertEntry(before);
        await session.noteChange({ version: 1, id: `h-${id}`, at, settingId: id, before });
        await session.deleteEntry(id);
        return done(undefined);
      });
    await take('b1', '2031-05-06T07:00:00.000Z');
    await take('b2', '2031-05-07T07:00:00.000Z');
    const aside = (): unknown[] => {
      const db = new Database(file, { readonly: true });
      const rows = db.prepare('select id from setting_change where aside is not null').all();
      db.close();
      return rows;
    };
    expect(aside()).toEqual([{ id: 'h-b1' }, { id: 'h-b2' }]);
    await take('b3', '2031-05-07T07:00:00.001Z');
    expect(aside()).toEqual([{ id: 'h-b2' }, { id: 'h-b3' }]);
    await store.close();
  });

  it('has a fixture of every schema version', () => {
    expect(readdirSync(fixtures).sort()).toEqual(
      migrations.map(({ number }) => `version-${String(number)}.sql`).sort(),
    );
  });

  it.each([
    ['/proc/somewhere', 'store-no-such-place'],
    ['/proc', 'store-no-such-place'],
    [`/tmp/${'n'.repeat(300)}`, 'store-name-too-long'],
  ])('says what is the matter with a place where nothing can be kept: %s', async (place, code) => {
    if (process.platform !== 'linux') return;
    await expect(
      openSqliteStore({ file: join(place, 'w.sqlite'), openedAt: sampleTime }),
    ).rejects.toMatchObject({ problem: { code } });
  });

  it('notes each step once, with its time', async () => {
    await (await open()).close();
    await (await open({ openedAt: '2032-01-01T00:00:00.000Z' })).close();
    const db = new Database(file);
    expect(db.prepare('select * from schema_step').all()).toEqual([
      { number: 1, name: 'first', applied_at: sampleTime },
      { number: 2, name: 'machine-tests', applied_at: sampleTime },
      { number: 3, name: 'example-tests', applied_at: sampleTime },
      { number: 4, name: 'machines', applied_at: sampleTime },
      { number: 5, name: 'on-the-bed', applied_at: sampleTime },
      { number: 6, name: 'order-by-counter', applied_at: sampleTime },
      { number: 7, name: 'started-orders', applied_at: sampleTime },
      { number: 8, name: 'found-by', applied_at: sampleTime },
      { number: 9, name: 'card-photos', applied_at: sampleTime },
      { number: 10, name: 'phones', applied_at: sampleTime },
      { number: 11, name: 'near-in-book', applied_at: sampleTime },
      { number: 12, name: 'own-words', applied_at: sampleTime },
      { number: 13, name: 'setting-photos', applied_at: sampleTime },
      { number: 14, name: 'setting-changes', applied_at: sampleTime },
      { number: 15, name: 'roles', applied_at: sampleTime },
    ]);
    db.close();
  });

  it('runs what is missing on what an earlier program kept, and nothing twice', async () => {
    const before = new Database(file);
    before.exec(readFileSync(join(fixtures, 'version-1.sql'), 'utf8'));
    before.close();
    const store = await open({ openedAt: '2032-01-01T00:00:00.000Z' });
    await store.change(async (session) => {
      await session.insertMachineTest('metering', sampleMetering('m1'));
      return done(undefined);
    });
    await store.close();
    const again = await open({ openedAt: '2033-01-01T00:00:00.000Z' });
    expect(await again.read((session) => session.machineTest('metering', 'm1'))).toEqual(
      sampleMetering('m1'),
    );
    await again.close();
    const db = new Database(file);
    expect(db.prepare('select number, applied_at from schema_step order by number').all()).toEqual([
      { number: 1, applied_at: sampleTime },
      { number: 2, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 3, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 4, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 5, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 6, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 7, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 8, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 9, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 10, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 11, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 12, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 13, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 14, applied_at: '2032-01-01T00:00:00.000Z' },
      { number: 15, applied_at: '2032-01-01T00:00:00.000Z' },
    ]);
    db.close();
  });

  it('leaves the old schema whole when a step fails', async () => {
    await (await open()).close();
    const broken = {
      number: migrations.length + 1,
      name: 'broken',
      statements: ['create table half (id text)', 'create nonsense'],
    };
    await expect(open({ migrations: [...migrations, broken] })).rejects.toThrow();
    const db = new Database(file);
    expect(db.prepare(`select name from sqlite_master where name = 'half'`).all()).toEqual([]);
    expect(db.prepare('select max(number) as n from schema_step').get()).toEqual({
      n: migrations.length,
    });
    db.close();
    await (await open()).close();
  });

  it('refuses what a newer program has kept, and leaves it alone', async () => {
    const newer = {
      number: 999,
      name: 'from the future',
      statements: ['create table later (id text)'],
    };
    await (await open({ migrations: [...migrations, newer] })).close();
    expect(await codeOf(open())).toBe('store-newer-than-program');
    await (await open({ migrations: [...migrations, newer] })).close();
  });

  it('writes to the disk at every commit, ahead of time, with foreign keys', async () => {
    const store = await open();
    const db = new Database(file);
    expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
    db.close();
    const orphan = store.change(async (session) =>
      done(await session.appendEvents('nobody', [sampleEvent('e1')])),
    );
    await expect(orphan).rejects.toThrow(/FOREIGN KEY/);
    await store.close();
  });

  it('says so when the file is no store', async () => {
    writeFileSync(
      file,
      'a shopping list, rather longer than the header that a database would have\n'.repeat(20),
    );
    expect(await codeOf(open())).toBe('store-not-ours');
  });

  it('says so when the folder cannot be made', async () => {
    writeFileSync(join(folder, 'in-the-way'), '');
    expect(await codeOf(open({ file: join(folder, 'in-the-way', 'workshop.sqlite') }))).toBe(
      'store-not-readable',
    );
  });

  it('says so when the file may not be written', async () => {
    await (await open()).close();
    chmodSync(file, 0o444);
    chmodSync(folder, 0o555);
    try {
      expect(await asNobody(() => codeOf(open()))).toBe('store-not-writable');
    } finally {
      chmodSync(folder, 0o755);
    }
  });

  it('says so when the folder may not be entered', async () => {
    const locked = join(folder, 'locked');
    mkdirSync(locked, { mode: 0o000 });
    expect(await asNobody(() => codeOf(open({ file: join(locked, 'workshop.sqlite') })))).toBe(
      'store-not-readable',
    );
  });

  it('says so when another program holds the pen too long', async () => {
    const store = await open({ busyMs: 20 });
    const other = new Database(file);
    other.exec('begin immediate');
    expect(await codeOf(store.change(() => Promise.resolve(done(1))))).toBe('store-busy');
    other.exec('rollback');
    other.close();
    expect(await store.change(() => Promise.resolve(done(1)))).toEqual(done(1));
    await store.close();
  });

  it('keeps nobody waiting while all that there is is read, and reads it as it was at one moment', async () => {
    const store = await open();
    await store.change(async (session) => {
      await session.insertMachine(sampleMachine());
      await session.insertStudy(sampleStudy('s1'), sampleTime);
      return done(undefined);
    });
    const namesIn = store.readLong(async (session) => {
      const before = await session.summaries();
      await store.change(async (changing) => {
        await changing.insertStudy(sampleStudy('s2'), sampleTime);
        return done(undefined);
      });
      const others = await store.read((reading) => reading.summaries());
      const after = await session.summaries();
      return [before, others, after].map((list) => list.map(({ id }) => id).sort());
    });
    expect(await namesIn).toEqual([['s1'], ['s1', 's2'], ['s1']]);
    await expect(
      store.readLong((session) => (session as unknown as Session).deleteStudy('s1')),
    ).rejects.toThrow();
    await store.close();
  });

  it('says so when the file has gone before all that there is is read', async () => {
    const store = await open();
    renameSync(file, `${file}.elsewhere`);
    expect(await codeOf(store.readLong((session) => session.summaries()))).toBe('store-gone');
    await store.close();
  });

  it.each(['read', 'readLong'] as const)(
    'gives others a turn in the middle of a session that asks much: %s',
    async (look) => {
      const store = await open();
      let turns = 0;
      let isOver = false;
      const take = (): void => {
        turns += 1;
        if (!isOver) setImmediate(take);
      };
      setImmediate(take);
      const within = await store[look](async (session) => {
        const atFirst = turns;
        const startedAt = performance.now();
        while (performance.now() - startedAt < 100) await session.looseTallies();
        return turns - atFirst;
      });
      isOver = true;
      expect(within).toBeGreaterThan(2);
      await store.close();
    },
  );

  it('names the row that it cannot read', async () => {
    const store = await open();
    await store.change(async (session) => {
      await session.insertMachine(sampleMachine());
      await session.insertStudy(sampleStudy('s1'), sampleTime);
      return done(undefined);
    });
    const other = new Database(file);
    other.exec(`update machine set body = '{"maxPowerPct":400}'`);
    other.close();
    expect(await codeOf(store.read((session) => session.study('s1')))).toBe('store-row-unreadable');
    await store.close();
  });

  it('passes over damaged rows in lists, names them, and still refuses the thing itself', async () => {
    const store = await open();
    await store.change(async (session) => {
      await session.insertMachine(sampleMachine());
      for (const id of ['s2', 's1'])
        await session.insertStudy(
          sampleStudy(id, {
            cards: [sampleCard()],
            events: [sampleEvent('e1'), sampleEvent('e2')],
          }),
          sampleTime,
        );
      await session.insertEntry(sampleEntry('b1'));
      return done(undefined);
    });
    const other = new Database(file);
    other.exec(`update study set stock = '{}' where id = 's1'`);
    other.exec(`update reading_event set body = 'x' where study_id = 's2' and id = 'e1'`);
    other.exec(`update proven_setting set body = '[]'`);
    other.close();
    await store.read(async (session) => {
      expect((await session.summaries()).map(({ id }) => id)).toEqual(['s2']);
      expect(await session.entries()).toEqual([]);
      expect((await session.onBed())?.id).toBe('s2');
      const events = (await session.studyAsReadable('s2'))?.study.events ?? [];
      expect(events.map(({ id }) => id)).toEqual(['e2']);
      const named = session.passedOver().map(({ params: { table, id } }) => [table, id]);
      expect(named).toEqual([
        ['study', 's1'],
        ['proven_setting', 'b1'],
        ['study', 's1'],
        ['reading_event', 'e1'],
      ]);
    });
    expect(await codeOf(store.read((session) => session.study('s2')))).toBe('store-row-unreadable');
    await store.close();
  });

  it.each([
    ['create table study (id text primary key)'],
    ['create table orders (id text)'],
    ['create table schema_step (number integer primary key, name text, applied_at text)'],
    [
      `create table schema_step (number integer primary key, name text, applied_at text);
       insert into schema_step values (1, 'first', '2031-01-01T00:00:00.000Z');
       create table study (id text primary key)`,
    ],
    [
      `create table schema_step (number integer, name text, applied_at text);
       insert into schema_step values (1, 'users', '2031-01-01T00:00:00.000Z')`,
    ],
  ])('refuses a foreign store and leaves it as it is: %s', async (statements) => {
    const other = new Database(file);
    other.exec(statements);
    other.close();
    const before = readFileSync(file);
    expect(await codeOf(open())).toBe('store-not-ours');
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  it('leaves the log beside a file that is no database: it may hold what was said last', async () => {
    const other = new Database(file);
    other.pragma('journal_mode = WAL');
    other.exec('create table said (what text)');
    const log = readFileSync(`${file}-wal`);
    other.close();
    writeFileSync(file, Buffer.alloc(8192, 'X'));
    writeFileSync(`${file}-wal`, log);
    expect(await codeOf(open())).toBe('store-not-ours');
    expect(readFileSync(`${file}-wal`).equals(log)).toBe(true);
    expect(readFileSync(file).equals(Buffer.alloc(8192, 'X'))).toBe(true);
  });

  it.each([
    [
      'deleted',
      () => {
        for (const end of ['', '-wal', '-shm']) rmSync(`${file}${end}`);
      },
    ],
    [
      'moved',
      () => {
        renameSync(file, `${file}.elsewhere`);
      },
    ],
    [
      'replaced',
      () => {
        renameSync(file, `${file}.old`);
        writeFileSync(file, '');
      },
    ],
    [
      'left without its log',
      () => {
        rmSync(`${file}-wal`);
      },
    ],
  ])('says so at the next write when its file was %s', async (_what, take) => {
    const store = await open();
    const write = (id: string) =>
      store.change(async (session) => {
        await session.insertMachineTest('metering', sampleMetering(id));
        return done(undefined);
      });
    await write('m1');
    take();
    expect(await codeOf(write('m2'))).toBe('store-gone');
    await store.close();
  });
});

/** A store as a kill leaves it: its last changes are in its log alone. */
const killed = async (): Promise<readonly [main: Buffer, log: Buffer]> => {
  const store = await open();
  for (const id of ['s1', 's2', 's3'])
    await store.change(async (session) => {
      if ((await session.machines()).length === 0) await session.insertMachine(sampleMachine());
      await session.insertStudy(sampleStudy(id), sampleTime);
      return done(undefined);
    });
  const [main, log] = [readFileSync(file), readFileSync(`${file}-wal`)];
  await store.close();
  return [main, log];
};

describe('a data file that is damaged', () => {
  it.each([
    ['within a page', 0.5, 100],
    ['between two pages', 0.5, 0],
    ['after its first page', 0, 4096],
  ])('is left untouched with its log where it was cut off %s', async (_, share, more) => {
    const store = await open();
    await store.close();
    const [, log] = await killed();
    const whole = readFileSync(file);
    const half = whole.subarray(0, Math.floor((share * whole.length) / 4096) * 4096 + more);
    writeFileSync(file, half);
    writeFileSync(`${file}-wal`, log);
    // Its log is of the moment before all of it was carried over.
    expect(await codeOf(open())).toBe('store-not-ours');
    expect(readFileSync(file).equals(half)).toBe(true);
    expect(readFileSync(`${file}-wal`).equals(log)).toBe(true);
  });

  it('is opened where its log has what is missing, as after a power cut while it was carried over', async () => {
    // Never folded before: all pages are in the log.
    const [main, log] = await killed();
    expect(log.length).toBeGreaterThan(main.length);
    const whole = readFileSync(file);
    for (const pages of [1, 3]) {
      writeFileSync(file, whole.subarray(0, pages * 4096));
      writeFileSync(`${file}-wal`, log);
      const store = await open();
      expect(await store.read(async (session) => (await session.summaries()).length)).toBe(3);
      await store.close();
    }
  });

  it('begins anew where a first start was cut off before anything was written', async () => {
    for (const made of [() => undefined, () => writeFileSync(`${file}.lock`, '')]) {
      made();
      writeFileSync(file, '');
      await (await open()).close();
      rmSync(file);
    }
    // The lock is of an earlier workshop, the file of a start that made it and was killed.
    utimesSync(`${file}.lock`, 1e9, 1e9);
    const store = await open({ openedAt: sampleTime });
    await store.close();
    expect(statSync(`${file}.lock`).mtimeMs).toBe(1e12);
  });

  it.each<readonly [string, () => void]>([
    ['a log with changes', () => writeFileSync(`${file}-wal`, 'x'.repeat(5000))],
    ['what a restore put aside', () => writeFileSync(`${file}.before-restore-2031`, 'kept')],
    ['a lock that is older', () => utimesSync(`${file}.lock`, 1e9, 1e9)],
  ])('is not begun anew where it is empty beside %s', async (_, put) => {
    await (await open()).close();
    writeFileSync(file, '');
    put();
    const names = readdirSync(folder);
    expect(await codeOf(open())).toBe('store-emptied');
    expect(await codeOf(openSqliteToRead({ file, openedAt: sampleTime }))).toBe('store-emptied');
    expect(readdirSync(folder)).toEqual(names);
    expect(statSync(file).size).toBe(0);
  });
});
