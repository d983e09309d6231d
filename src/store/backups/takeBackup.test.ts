import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
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
import { sampleMachine, sampleStudy, sampleTime } from '../../../test/samples/studies.ts';
import { asNobody } from '../../../test/asNobody.ts';
import type { Store } from '../../app/ports/ports.ts';
import { readBackupName } from '../../core/backups/backupName.ts';
import { done } from '../../core/problem.ts';
import { openStore } from '../openStore.ts';
import { restoreSqlite } from '../restoreSqlite.ts';
import { backupSqlite } from '../sqliteBackup.ts';
import { holdStore } from '../storeLock.ts';
import { backupFolder } from './backupFolder.ts';
import { takeBackup, type TakeOptions } from './takeBackup.ts';

let root: string;
let folder: string;
let store: Store;
let place: { readonly kind: 'file'; readonly file: string };
const start = Date.parse(sampleTime);
const after = (hours: number): string => new Date(start + hours * 3_600_000).toISOString();

beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), 'throughcut-backups-'));
  folder = join(root, 'backups');
  mkdirSync(folder, { mode: 0o777 });
  place = { kind: 'file', file: join(root, 'data', 'workshop.sqlite') };
  store = await openStore(place, sampleTime);
});
afterEach(async () => {
  await store.close();
  rmSync(root, { recursive: true, force: true });
});

const add = (id: string) =>
  store.change(async (session) => {
    if ((await session.machines()).length === 0) await session.insertMachine(sampleMachine());
    await session.insertStudy(sampleStudy(id), sampleTime);
    return done(undefined);
  });
const take = (hours: number, more: Partial<TakeOptions> = {}) =>
  takeBackup({
    place,
    plan: { folder, everyHours: 1, days: 4, months: 2 },
    now: after(hours),
    ...more,
  });
const visible = () => readdirSync(folder).filter((name) => !name.startsWith('.'));
const restoredIds = async (name: string): Promise<readonly string[]> => {
  const file = join(root, `back-${name}`, 'w.sqlite');
  restoreSqlite(file, join(folder, name), sampleTime);
  const back = await openStore({ kind: 'file', file }, sampleTime);
  try {
    return await back.read(async (session) => (await session.summaries()).map(({ id }) => id));
  } finally {
    await back.close();
  }
};
const thrownBy = async (work: Promise<unknown>): Promise<unknown> => {
  try {
    await work;
  } catch (thrown) {
    return (thrown as { readonly problem: unknown }).problem;
  }
  return 'nothing';
};

describe('a backup on a schedule', () => {
  it('is whole, can be restored, is its owner’s alone, and is due again only later', async () => {
    await add('s1');
    expect(await take(0)).toMatchObject({ what: 'taken' });
    await add('s2');
    expect(await take(0.9)).toMatchObject({
      what: 'not-due',
      lastAt: `${after(0).slice(0, 19)}.000Z`,
    });
    expect(await take(1)).toMatchObject({ what: 'taken' });
    const [first = '', second = ''] = visible();
    expect(visible()).toHaveLength(2);
    expect(await restoredIds(first)).toEqual(['s1']);
    expect(await restoredIds(second)).toEqual(['s2', 's1']);
    if (process.platform !== 'win32') expect(statSync(join(folder, first)).mode & 0o077).toBe(0);
  });

  it('is of one moment while others write', async () => {
    await add('s0');
    let n = 0;
    const over = new AbortController();
    const writing = (async () => {
      while (!over.signal.aborted) {
        await add(`w${String((n += 1))}`);
        await new Promise((resolve) => setImmediate(resolve));
      }
    })();
    for (let hour = 0; hour < 5; hour += 1)
      expect(await take(hour)).toMatchObject({ what: 'taken' });
    over.abort();
    await writing;
    expect(n).toBeGreaterThan(5);
  });

  it('leaves what it does not know: others’ files, another workshop’s, folders of such a name', async () => {
    const ours = backupFolder(folder, place);
    const foreign = {
      'notes.txt': 'mine',
      'throughcut-00000000-20200101T000000Z.sqlite': 'another workshop',
      'throughcut.sqlite': 'by hand',
    };
    for (const [name, content] of Object.entries(foreign))
      writeFileSync(join(folder, name), content);
    mkdirSync(ours.fileOf('2020-01-02T00:00:00.000Z'));
    for (let hour = 0; hour < 100; hour += 5) await take(hour);
    for (const [name, content] of Object.entries(foreign))
      expect(readFileSync(join(folder, name), 'utf8')).toBe(content);
    expect(existsSync(ours.fileOf('2020-01-02T00:00:00.000Z'))).toBe(true);
    // A day whole; the last of each of four days and of two months at most.
    expect(ours.times().length).toBeLessThanOrEqual(5 + 4 + 2);
    expect(ours.times().length).toBeGreaterThan(5);
  });

  it('is made by one program at a time', async () => {
    const held = holdStore(backupFolder(folder, place).lock, { how: 'alone', waitMs: 0 });
    expect(await take(0)).toEqual({ what: 'elsewhere' });
    held.release();
    const both = await Promise.all([take(0), take(0)]);
    expect(both.map(({ what }) => what).sort()).toEqual(['elsewhere', 'taken']);
    expect(visible()).toHaveLength(1);
  });

  it('does not bear its name where it does not come back as it was', async () => {
    await add('s1');
    await take(0);
    const before = visible();
    const losesOne: TakeOptions['whole'] = async (_place, to) => {
      const copied = await backupSqlite(place.file, to);
      const db = new Database(to);
      db.exec('delete from study');
      db.close();
      return copied;
    };
    expect(await thrownBy(take(2, { whole: losesOne }))).toMatchObject({
      code: 'backup-differs',
      params: { table: 'study' },
    });
    const flipsBits: TakeOptions['whole'] = async (_place, to) => {
      const copied = await backupSqlite(place.file, to);
      const bytes = readFileSync(to);
      writeFileSync(to, bytes.fill(0xa5, 4096 * 3, 4096 * 5));
      return copied;
    };
    expect(await thrownBy(take(2, { whole: flipsBits }))).toMatchObject({
      code: 'backup-not-ours',
    });
    expect(visible()).toEqual(before);
  });

  it('says that its folder is gone, and makes none', async () => {
    await take(0);
    renameSync(folder, `${folder}-away`);
    expect(await thrownBy(take(2))).toEqual({
      code: 'backup-folder-not-there',
      params: { folder },
    });
    expect(existsSync(folder)).toBe(false);
    renameSync(`${folder}-away`, folder);
    expect(await take(2)).toMatchObject({ what: 'taken' });
  });

  it.skipIf(process.platform === 'win32')('says that its folder takes no files', async () => {
    const shut = join(root, 'shut');
    mkdirSync(shut, { mode: 0o755 });
    chmodSync(root, 0o755);
    const said = await asNobody(() =>
      thrownBy(take(0, { plan: { folder: shut, everyHours: 1, days: 1, months: 1 } })),
    );
    expect(said).toMatchObject({ code: 'file-not-written' });
  });
});

const sh = (command: string): void => void execFileSync('sh', ['-c', command], { stdio: 'ignore' });

const canMount = (): boolean => {
  try {
    mkdirSync('/tmp/throughcut-mount', { recursive: true });
    sh('mount -t tmpfs -o size=64k tmpfs /tmp/throughcut-mount');
    sh('umount /tmp/throughcut-mount');
    return true;
  } catch {
    return false;
  }
};

describe('a backup that is in trouble', () => {
  it.skipIf(!canMount())(
    'on a full disk says so, leaves nothing half, and goes on when there is room',
    async () => {
      sh(`mount -t tmpfs -o size=1500k tmpfs '${folder}'`);
      try {
        await add('s1');
        await take(0);
        const before = visible();
        writeFileSync(join(folder, 'filler'), Buffer.alloc(1_000_000));
        expect(await thrownBy(take(2))).toMatchObject({ code: 'file-disk-full' });
        rmSync(join(folder, 'filler'));
        expect(visible()).toEqual(before);
        expect(await take(2)).toMatchObject({ what: 'taken' });
        expect(visible()).toHaveLength(2);
      } finally {
        sh(`umount '${folder}'`);
      }
    },
  );

  it('that was killed leaves no file that bears a backup’s name; the next sweeps up', async () => {
    await add('s1');
    await take(0);
    const ours = backupFolder(folder, place);
    const [unchecked, tried] = [ours.uncheckedOf(after(1)), ours.triedIn(after(1))];
    // As each step leaves it: the copy half written, written, being tried.
    writeFileSync(`${unchecked}.0a1b2c3d.part`, 'half');
    writeFileSync(`${unchecked}.0a1b2c3d.part-journal`, 'half');
    writeFileSync(unchecked, readFileSync(ours.fileOf(after(0))));
    mkdirSync(tried);
    writeFileSync(join(tried, 'w.sqlite'), 'half');
    expect(visible().filter((name) => readBackupName(name) !== undefined)).toHaveLength(1);
    expect(ours.times()).toHaveLength(1);
    await take(2);
    expect(visible().every((name) => readBackupName(name) !== undefined)).toBe(true);
    expect(visible()).toHaveLength(2);
  });
});
