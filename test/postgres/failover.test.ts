import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { describe, expect, it } from 'vitest';
import { done } from '../../src/core/problem.ts';
import { openStore } from '../../src/store/openStore.ts';
import {
  sampleCard,
  sampleEvent,
  sampleMachine,
  sampleStudy,
  sampleTime,
} from '../samples/studies.ts';
import {
  asked,
  asServer,
  newFolder,
  startPostgres,
  type PostgresServer,
} from './postgresServer.ts';

/**
 * A copy that follows a server, made as the PostgreSQL manual has it (25.3.3, base backup by the low-level interface; 26.2,
 * standby servers).
 */
const followerOf = async (leader: PostgresServer): Promise<PostgresServer> => {
  const folder = newFolder('throughcut-follower-');
  const data = join(folder, 'data');
  const client = new pg.Client(leader.urlOf('postgres'));
  await client.connect();
  await client.query(`select pg_backup_start('follower', true)`);
  await asServer('cp', ['-a', join(leader.folder, 'data'), data]);
  for (const name of ['postmaster.pid', 'postmaster.opts']) rmSync(join(data, name));
  const { rows } = await client.query<{ readonly labelfile: string }>(
    'select labelfile from pg_backup_stop()',
  );
  await client.end();
  for (const [name, content] of [
    ['backup_label', rows[0]?.labelfile ?? ''],
    ['standby.signal', ''],
  ] as const) {
    writeFileSync(join(folder, name), content);
    await asServer('cp', [join(folder, name), join(data, name)]);
  }
  return startPostgres({
    folder,
    settings: [
      `primary_conninfo=host=127.0.0.1 port=${String(leader.port)} user=tester application_name=follower`,
    ],
  });
};

const eventually = async (work: () => Promise<unknown>): Promise<void> => {
  for (let tries = 0; ; tries += 1) {
    try {
      await work();
      return;
    } catch (thrown) {
      if (tries > 400) throw thrown;
      await pause(50);
    }
  }
};

describe('a workshop on a server and its copy', () => {
  it('goes on at the copy when the server dies, with all that was acknowledged', async () => {
    const leader = await startPostgres();
    const follower = await followerOf(leader);
    try {
      // What is acknowledged is at the copy too (26.2.8, synchronous replication).
      await asked(
        leader.urlOf('postgres'),
        `alter system set synchronous_standby_names = 'follower'`,
      );
      await asked(leader.urlOf('postgres'), 'select pg_reload_conf()');
      const url = `postgres://tester@127.0.0.1:${String(leader.port)},127.0.0.1:${String(follower.port)}/postgres`;
      const store = await openStore({ kind: 'database', url }, sampleTime);
      await store.change(async (session) => {
        await session.insertMachine(sampleMachine());
        await session.insertStudy(sampleStudy('s1', { cards: [sampleCard()] }), sampleTime);
        return done(undefined);
      });
      const acknowledged: string[] = [];
      const append = async (id: string): Promise<void> => {
        await store.change(async (session) =>
          done(await session.appendEvents('s1', [sampleEvent(id)])),
        );
        acknowledged.push(id);
      };
      for (let i = 0; i < 20; i += 1) await append(`before${String(i)}`);
      await leader.kill();
      // Only a copy is left: it can be read by hand, and takes nothing.
      await expect(append('meanwhile')).rejects.toMatchObject({
        problem: {
          code: expect.stringMatching(/^store-(unreachable|takes-no-changes)$/) as string,
        },
      });
      await asked(follower.urlOf('postgres'), 'select pg_promote()');
      await eventually(() => append('after'));
      const stored = await store.read((session) => session.study('s1'));
      expect(stored?.study.events.map(({ id }) => id)).toEqual(acknowledged);
      expect(acknowledged).toHaveLength(21);
      await store.close();
    } finally {
      await follower.destroy();
      await leader.destroy();
      rmSync(leader.folder, { recursive: true, force: true });
    }
  });
});
