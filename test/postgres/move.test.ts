import { copyFileSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { exportAll } from '../../src/app/workshop/exportAll.ts';
import type { StoredChange } from '../../src/app/ports/storedChange.ts';
import type { StorePlace } from '../../src/host/storePlace.ts';
import { backupDatabase, restoreDatabase } from '../../src/store/databaseBackup.ts';
import { moveStore } from '../../src/store/moveStore.ts';
import { openStore } from '../../src/store/openStore.ts';
import { restoreSqlite } from '../../src/store/restoreSqlite.ts';
import { sampleTime } from '../samples/studies.ts';
import { asked, startPostgres, type PostgresServer } from './postgresServer.ts';
import { fillWorkshop } from './filledWorkshop.ts';

let server: PostgresServer;
let folder: string;
let schemas = 0;
beforeAll(async () => {
  server = await startPostgres();
});
afterAll(() => server.destroy());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'throughcut-move-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const at = sampleTime;
const inFile = (name: string): StorePlace => ({ kind: 'file', file: join(folder, name) });
const inDatabase = (): StorePlace & { readonly kind: 'database' } => {
  schemas += 1;
  return { kind: 'database', url: `${server.urlOf('postgres')}?schema=moved_${String(schemas)}` };
};
const filled = async (place: StorePlace): Promise<void> => {
  const store = await openStore(place, at);
  await fillWorkshop(store);
  await store.close();
};
const whole = async (place: StorePlace) => {
  const store = await openStore(place, at);
  try {
    const removed = await store.read((session) => session.removedStudies());
    const phones = await store.phones.read((session) => session.phones());
    return { ...(await exportAll({ store, clock: { now: () => at } })), removed, phones };
  } finally {
    await store.close();
  }
};

describe('moving a workshop', () => {
  it('carries every row to the other engine and back, and counts them', async () => {
    const [first, database, second] = [inFile('first'), inDatabase(), inFile('second')];
    await filled(first);
    const there = await moveStore({ from: first, to: database, at });
    const back = await moveStore({ from: database, to: second, at });
    expect(Object.fromEntries(there.rows.map(({ table, rows }) => [table, rows]))).toEqual({
      machine: 1,
      study: 5,
      card: 5,
      reading_event: 1_203 + 4 * 3,
      card_photo: 24,
      started_order: 5,
      proven_setting: 5,
      setting_photo: 12,
      setting_change: 5,
      tally: 6,
      machine_test: 5,
      removed_study: 1,
      phone: 5,
    });
    expect(back.rows).toEqual(there.rows);
    const before = await whole(first);
    expect(before.studies).toHaveLength(5);
    expect(await whole(database)).toEqual(before);
    expect(await whole(second)).toEqual(before);
  });

  it('goes nowhere where something is kept already, nor to where it is, and leaves both as they are', async () => {
    const [first, database] = [inFile('first'), inDatabase()];
    await filled(first);
    await filled(database);
    await expect(moveStore({ from: first, to: database, at })).rejects.toMatchObject({
      problem: { code: 'move-target-not-empty' },
    });
    await expect(moveStore({ from: first, to: first, at })).rejects.toMatchObject({
      problem: { code: 'move-same-place' },
    });
    expect(await whole(database)).toEqual(await whole(first));
  });

  it('waits for nobody who is at work at either place: what they kept could be left behind', async () => {
    const [first, database] = [inFile('first'), inDatabase()];
    await filled(first);
    const atWork = await openStore(database, at);
    await expect(moveStore({ from: first, to: database, at })).rejects.toMatchObject({
      problem: { code: 'store-server-busy' },
    });
    await expect(moveStore({ from: database, to: inFile('x'), at })).rejects.toMatchObject({
      problem: { code: 'store-server-busy' },
    });
    await atWork.close();
    const atFile = await openStore(first, at);
    await expect(moveStore({ from: first, to: database, at })).rejects.toMatchObject({
      problem: { code: 'store-busy' },
    });
    await atFile.close();
    await moveStore({ from: first, to: database, at });
  });

  it('keeps nothing where a row does not arrive as it left', async () => {
    const [first, database] = [inFile('first'), inDatabase()];
    await filled(first);
    await (await openStore(database, at)).close();
    const schema = new URL(database.url).searchParams.get('schema') ?? '';
    await asked(
      server.urlOf('postgres'),
      `create function ${schema}.other() returns trigger language plpgsql as
        $$ begin new.body := replace(new.body, 'K1QX', 'K1QY'); return new; end $$;
      create trigger other before insert on ${schema}.card for each row execute function ${schema}.other()`,
    );
    await expect(moveStore({ from: first, to: database, at })).rejects.toThrow(
      'card s1 K1QX differs',
    );
    expect((await whole(database)).studies).toEqual([]);
  });
});

describe('the backup of a database', () => {
  it('is one file that a data folder can be restored from', async () => {
    const database = inDatabase();
    await filled(database);
    const atWork = await openStore(database, at);
    const to = join(folder, 'copies', 'backup.sqlite');
    await backupDatabase(database, { to, at });
    await atWork.close();
    expect(readdirSync(join(folder, 'copies'))).toEqual(['backup.sqlite']);
    const file = join(folder, 'workshop.sqlite');
    restoreSqlite(file, to, at);
    expect(await whole({ kind: 'file', file })).toEqual(await whole(database));
  });

  it('is put back in one step: what was there lies aside, and who is at work is told', async () => {
    const [database, other] = [inDatabase(), inDatabase()];
    await filled(database);
    const before = await whole(database);
    const from = join(folder, 'backup.sqlite');
    await backupDatabase(database, { to: from, at });
    const atWork = await openStore(other, at);
    await fillWorkshop(atWork, 7);
    const lost = await whole(other);
    const told: StoredChange[] = [];
    const heard = new Promise<void>((resolve) => {
      atWork.hear((change) => {
        told.push(change);
        // Once as it begins to listen, once for what was put back.
        if (told.length === 2) resolve();
      });
    });
    await expect.poll(() => told.length).toBe(1);
    const restored = await restoreDatabase(other, { from, asideIn: folder, at });
    await heard;
    await atWork.close();
    expect(await whole(other)).toEqual(before);
    expect(existsSync(restored.putAside ?? '')).toBe(true);
    const aside = join(folder, 'aside.sqlite');
    copyFileSync(restored.putAside ?? '', aside);
    expect(await whole({ kind: 'file', file: aside })).toEqual(lost);
  });

  it('takes no file that is none, and leaves what is there', async () => {
    const database = inDatabase();
    await filled(database);
    const before = await whole(database);
    const options = { asideIn: folder, at };
    await expect(
      restoreDatabase(database, { ...options, from: join(folder, 'none') }),
    ).rejects.toMatchObject({ problem: { code: 'store-not-there' } });
    const text = join(folder, 'text.sqlite');
    copyFileSync('package.json', text);
    await expect(restoreDatabase(database, { ...options, from: text })).rejects.toMatchObject({
      problem: { code: 'backup-not-ours' },
    });
    expect(await whole(database)).toEqual(before);
    expect(readdirSync(folder)).toEqual(['text.sqlite']);
  });
});
