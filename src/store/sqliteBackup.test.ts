import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sampleStudy, sampleTime } from '../../test/samples/studies.ts';
import type { Store } from '../app/ports.ts';
import { done } from '../core/problem.ts';
import { backupSqlite, restoreSqlite } from './sqliteBackup.ts';
import { openSqliteStore } from './sqliteStore.ts';
import { StoreError } from './storeError.ts';

let folder: string;
let file: string;
let copy: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-backup-'));
  file = join(folder, 'workshop.sqlite');
  copy = join(folder, 'kept', 'backup.sqlite');
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const open = () => openSqliteStore({ file, openedAt: sampleTime });
const add = (store: Store, id: string) =>
  store.change(async (session) => {
    await session.insertStudy(sampleStudy(id), sampleTime);
    return done(undefined);
  });
const ids = (store: Store) =>
  store.read(async (session) => (await session.summaries()).map(({ id }) => id));
const idsNow = async (): Promise<readonly string[]> => {
  const store = await open();
  const found = await ids(store);
  await store.close();
  return found;
};
const thrownBy = async (work: () => unknown): Promise<string> => {
  try {
    await work();
  } catch (thrown) {
    if (thrown instanceof StoreError) return thrown.problem.code;
    throw thrown;
  }
  return 'nothing';
};

describe('backup and restore', () => {
  it('copy the store while it is at work, and put it back', async () => {
    const store = await open();
    await add(store, 's1');
    await backupSqlite(file, copy);
    await add(store, 's2');
    await store.close();
    expect(readdirSync(join(folder, 'kept'))).toEqual(['backup.sqlite']);
    const aside = restoreSqlite(file, copy, '2031-06-07T08:09:10.123Z');
    expect(aside).toBe(`${file}.before-restore-20310607080910`);
    expect(await idsNow()).toEqual(['s1']);
  });

  it('keep what was there aside, whole', async () => {
    const store = await open();
    await backupSqlite(file, copy);
    await add(store, 's1');
    await store.close();
    const aside = restoreSqlite(file, copy, sampleTime);
    expect(await idsNow()).toEqual([]);
    const again = restoreSqlite(file, aside ?? '', sampleTime);
    expect(again).not.toBe(aside);
    expect(await idsNow()).toEqual(['s1']);
  });

  it('work where there is no store yet', async () => {
    await (await open()).close();
    await backupSqlite(file, copy);
    rmSync(file);
    expect(restoreSqlite(file, copy, sampleTime)).toBeUndefined();
    expect(await idsNow()).toEqual([]);
  });

  it('take a store copied by hand with its last changes beside it', async () => {
    const store = await open();
    await add(store, 's1');
    for (const end of ['', '-wal'])
      writeFileSync(join(folder, `hand${end}`), readFileSync(`${file}${end}`));
    await store.close();
    restoreSqlite(file, join(folder, 'hand'), sampleTime);
    expect(await idsNow()).toEqual(['s1']);
  });

  it('do not restore under the hands of a running program', async () => {
    const store = await open();
    await add(store, 's1');
    await backupSqlite(file, copy);
    expect(await thrownBy(() => restoreSqlite(file, copy, sampleTime))).toBe('store-busy');
    await add(store, 's2');
    expect(await ids(store)).toEqual(['s1', 's2']);
    await store.close();
  });

  it('refuse what is no store of ours, and leave the store alone', async () => {
    const store = await open();
    await add(store, 's1');
    await store.close();
    const restore = (from: string) => thrownBy(() => restoreSqlite(file, from, sampleTime));
    expect(await restore(join(folder, 'nowhere'))).toBe('store-not-there');
    writeFileSync(
      join(folder, 'list'),
      'bread, milk, and a great deal more to fill a page '.repeat(20),
    );
    expect(await restore(join(folder, 'list'))).toBe('store-not-ours');
    const other = new Database(join(folder, 'other'));
    other.exec('create table thing (id text)');
    other.close();
    expect(await restore(join(folder, 'other'))).toBe('store-not-ours');
    await backupSqlite(file, copy);
    const newer = new Database(copy);
    newer.exec(`insert into schema_step values (999, 'future', '${sampleTime}')`);
    newer.close();
    expect(await restore(copy)).toBe('store-newer-than-program');
    expect(await idsNow()).toEqual(['s1']);
    expect(readdirSync(folder).filter((name) => name.includes('before-restore'))).toEqual([]);
    expect(existsSync(`${file}.part`)).toBe(false);
  });

  it('say so when there is nothing to copy, or nowhere to put it', async () => {
    expect(await thrownBy(() => backupSqlite(file, copy))).toBe('store-not-there');
    await (await open()).close();
    writeFileSync(join(folder, 'in-the-way'), '');
    const into = join(folder, 'in-the-way', 'backup');
    expect(await thrownBy(() => backupSqlite(file, into))).toBe('store-not-readable');
  });
});
