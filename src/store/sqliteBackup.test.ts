import {
  chmodSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { asNobody } from '../../test/asNobody.ts';
import { sampleMachine, sampleStudy, sampleTime } from '../../test/samples/studies.ts';
import type { Store } from '../app/ports/ports.ts';
import { done } from '../core/problem.ts';
import { HostError } from '../host/hostError.ts';
import { restoreSqlite } from './restoreSqlite.ts';
import { backupSqlite } from './sqliteBackup.ts';
import { openSqliteStore, openSqliteToRead } from './sqliteStore.ts';
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
    if ((await session.machines()).length === 0) await session.insertMachine(sampleMachine());
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
    if (thrown instanceof StoreError || thrown instanceof HostError) return thrown.problem.code;
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
    expect(await ids(store)).toEqual(['s2', 's1']);
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
    expect(await restore(join(folder, 'list'))).toBe('backup-not-ours');
    const other = new Database(join(folder, 'other'));
    other.exec('create table thing (id text)');
    other.close();
    expect(await restore(join(folder, 'other'))).toBe('backup-not-ours');
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
    expect(await thrownBy(() => backupSqlite(file, into))).toBe('file-folder-not-there');
  });
});

describe('restore over what is damaged', () => {
  const wreck = {
    'its first page': (bytes: Buffer) => bytes.fill(0xa5, 0, 4096),
    'its header': (bytes: Buffer) => bytes.fill(0, 0, 40),
    'cut in half': (bytes: Buffer) => bytes.subarray(0, bytes.length / 2),
    'a text in its place': () => Buffer.from('not a store at all\n'.repeat(300)),
    'nothing in it': () => Buffer.alloc(0),
  };

  it.each(Object.entries(wreck))('puts the backup in its place: %s', async (_what, damage) => {
    const store = await open();
    await add(store, 's1');
    await backupSqlite(file, copy);
    await store.close();
    const damaged = damage(readFileSync(file));
    writeFileSync(file, damaged);
    const aside = restoreSqlite(file, copy, sampleTime);
    expect(await idsNow()).toEqual(['s1']);
    expect(readFileSync(aside ?? '').equals(damaged)).toBe(true);
  });

  it('does not play a log that was left behind into the restored store', async () => {
    const store = await open();
    await add(store, 's1');
    await backupSqlite(file, copy);
    for (const id of ['s2', 's3']) await add(store, id);
    // As a kill leaves it: the log holds what the file does not have yet.
    const [main, log] = ['', '-wal'].map((end) => readFileSync(`${file}${end}`));
    await store.close();
    writeFileSync(file, main ?? '');
    writeFileSync(`${file}-wal`, log ?? '');
    const aside = restoreSqlite(file, copy, sampleTime) ?? '';
    expect(await idsNow()).toEqual(['s1']);
    expect(readFileSync(`${aside}-wal`).equals(log ?? Buffer.alloc(0))).toBe(true);
    restoreSqlite(file, aside, sampleTime);
    expect([...(await idsNow())].sort()).toEqual(['s1', 's2', 's3']);
  });

  it.each([0, 1, 2, 3])(
    'is finished at the next start when it is cut off after rename %i',
    async (at) => {
      const store = await open();
      await backupSqlite(file, copy);
      await add(store, 's1');
      const [main, log] = ['', '-wal'].map((end) => readFileSync(`${file}${end}`));
      await store.close();
      writeFileSync(file, main ?? '');
      writeFileSync(`${file}-wal`, log ?? '');
      writeFileSync(`${file}.ready-20310607080910`, readFileSync(copy));
      const aside = `${file}.before-restore-20310607080910`;
      if (at >= 1) renameSync(`${file}-wal`, `${aside}-wal`);
      if (at >= 2) renameSync(file, aside);
      if (at >= 3) writeFileSync(`${file}.part`, 'half a copy');
      expect(await idsNow()).toEqual([]);
      expect(readdirSync(folder).filter((name) => /ready|part/.test(name))).toEqual([]);
      restoreSqlite(file, aside, sampleTime);
      expect(await idsNow()).toEqual(['s1']);
    },
  );
});

describe('whose file it is', () => {
  it('is for its owner alone: store, log, backup and what was put aside', async () => {
    const store = await open();
    await add(store, 's1');
    await backupSqlite(file, copy);
    const rights = (path: string) => statSync(path).mode & 0o777;
    expect([file, `${file}-wal`, `${file}.lock`, copy].map(rights)).toEqual([
      0o600, 0o600, 0o600, 0o600,
    ]);
    await store.close();
    chmodSync(file, 0o644);
    await (await open()).close();
    expect(rights(file)).toBe(0o600);
    expect(rights(restoreSqlite(file, copy, sampleTime) ?? '')).toBe(0o600);
  });
});

describe('in a folder that is read-only', () => {
  it('backup and reading work all the same, and leave nothing there', async () => {
    const store = await open();
    await add(store, 's1');
    await store.close();
    rmSync(`${file}.lock`);
    const elsewhere = mkdtempSync(join(tmpdir(), 'throughcut-elsewhere-'));
    chmodSync(elsewhere, 0o777);
    chmodSync(file, 0o444);
    chmodSync(folder, 0o555);
    try {
      await asNobody(async () => {
        const read = await openSqliteToRead({ file, openedAt: sampleTime });
        expect(await ids(read)).toEqual(['s1']);
        await read.close();
        await backupSqlite(file, join(elsewhere, 'copy.sqlite'));
      });
      expect(readdirSync(folder)).toEqual(['workshop.sqlite']);
    } finally {
      chmodSync(folder, 0o755);
    }
    chmodSync(file, 0o600);
    restoreSqlite(file, join(elsewhere, 'copy.sqlite'), sampleTime);
    expect(await idsNow()).toEqual(['s1']);
    rmSync(elsewhere, { recursive: true });
  });
});
