import { mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { runCommand, serve, type Served } from '../bench/server/program.ts';
import { readBackupName } from '../src/core/backups/backupName.ts';
import { done } from '../src/core/problem.ts';
import { openStore } from '../src/store/openStore.ts';
import { sampleMachine, sampleStudy, sampleTime } from './samples/studies.ts';

const studies = 1500;

let root: string;
let data: string;
let folder: string;
beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), 'throughcut-backups-'));
  [data, folder] = [join(root, 'data'), join(root, 'backups')];
  mkdirSync(folder);
  const store = await openStore({ kind: 'file', file: join(data, 'workshop.sqlite') }, sampleTime);
  await store.change(async (session) => {
    await session.insertMachine(sampleMachine());
    for (let n = 0; n < studies; n += 1)
      await session.insertStudy(sampleStudy(`s${String(n)}`), sampleTime);
    return done(undefined);
  });
  await store.close();
});
afterEach(() => {
  rmSync(root, { recursive: true, force: true });
});

const start = (more: NodeJS.ProcessEnv = {}): Promise<Served> =>
  serve(data, { environment: { THROUGHCUT_BACKUP: folder, ...more } });
const finished = () => readdirSync(folder).filter((name) => readBackupName(name) !== undefined);
const stand = async ({ base }: Served): Promise<unknown> =>
  (await fetch(`${base}/api/backups`)).json();
const until = async (holds: () => boolean | Promise<boolean>): Promise<void> => {
  for (let tries = 0; tries < 400; tries += 1) {
    if (await holds()) return;
    await pause(50);
  }
  throw new Error('it did not come about');
};

describe('the program that makes backups', () => {
  it('makes one at its start, and answers meanwhile', async () => {
    const server = await start();
    try {
      await until(() => finished().length === 1);
      await until(async () => JSON.stringify(await stand(server)).includes('lastAt'));
    } finally {
      await server.kill();
    }
  });

  it(
    'may be killed in the midst of it: what bears a backup’s name can be restored',
    { timeout: 240_000 },
    async () => {
      const kept = join(root, 'kept');
      mkdirSync(kept);
      let [whole, cutOff] = [0, 0];
      for (let round = 0; round < 5; round += 1) {
        const server = await start();
        await pause(round * 90);
        await server.kill();
        if (finished().length === 0) cutOff += 1;
        for (const name of finished()) {
          whole += 1;
          renameSync(join(folder, name), join(kept, `${String(round)}.sqlite`));
        }
      }
      expect(cutOff).toBeGreaterThan(0);
      const server = await start();
      // The next one takes away what the others left.
      const all = () => readdirSync(folder).filter((name) => !name.startsWith('.'));
      await until(() => finished().length === 1 && all().length === 1);
      await server.kill();
      for (const name of [
        ...finished().map((one) => join(folder, one)),
        ...readdirSync(kept).map((one) => join(kept, one)),
      ]) {
        const back = mkdtempSync(join(root, 'back-'));
        expect(await runCommand(['restore', '--from', name], back)).toMatchObject({ code: 0 });
        const store = await openStore(
          { kind: 'file', file: join(back, 'workshop.sqlite') },
          sampleTime,
        );
        const { total } = await store.read((session) => session.listSheets({ limit: 1 }));
        await store.close();
        expect(total).toBe(studies);
      }
      expect(whole + cutOff).toBe(5);
    },
  );

  it('says at the page that the folder is gone; a setting that is none is refused at the start', async () => {
    const server = await start({ THROUGHCUT_BACKUP: join(root, 'stick') });
    try {
      await until(async () => JSON.stringify(await stand(server)).includes('failing'));
      expect(await stand(server)).toMatchObject({
        isOn: true,
        failing: { said: { code: 'backup-folder-not-there' } },
      });
    } finally {
      await server.kill();
    }
    const refused = await runCommand(['serve'], data, {
      environment: { THROUGHCUT_BACKUP: folder, THROUGHCUT_BACKUP_DAYS: 'all' },
    });
    expect(refused).toMatchObject({ code: 2 });
    expect(refused.err).toContain('THROUGHCUT_BACKUP_DAYS is “all”');
  });
});
