import { describe, expect, it } from 'vitest';
import { problemOf } from '../../core/problem.ts';
import { StoreError } from '../storeError.ts';
import { openBackupSchedule } from './backupSchedule.ts';
import type { BackupLook } from './takeBackup.ts';

/** A schedule whose clock is set by hand, in minutes, and whose backups go as they are told to. */
const byHand = () => {
  let minutes = 0;
  let next: () => Promise<BackupLook> = () => Promise.resolve({ what: 'not-due' });
  const [told, reported, asked]: [unknown[], unknown[], string[]] = [[], [], []];
  const now = () =>
    new Date(Date.parse('2031-05-06T07:00:00.000Z') + minutes * 60_000).toISOString();
  const schedule = openBackupSchedule({
    clock: { now },
    look: (at) => {
      asked.push(at);
      return next();
    },
    report: (error) => reported.push(error),
  });
  schedule.hear(({ failing }) => told.push(failing?.problem.code));
  return {
    schedule,
    now,
    told,
    reported,
    asked,
    goes: (work: typeof next) => void (next = work),
    after: (more: number) => {
      minutes += more;
      return schedule.look();
    },
  };
};
const gone = () =>
  Promise.reject(new StoreError(problemOf('backup-folder-not-there', { folder: '/x' })));
const full = () => Promise.reject(new StoreError(problemOf('store-disk-full', { file: '/x' })));

describe('the schedule of backups', () => {
  it('tells what is there, and counts those that are made', async () => {
    const { schedule, after, goes, now } = byHand();
    expect(schedule.stand()).toEqual({});
    goes(() => Promise.resolve({ what: 'taken', lastAt: now() }));
    await after(1);
    expect(schedule.stand()).toEqual({ lastAt: now() });
    goes(() => Promise.resolve({ what: 'not-due', lastAt: 'as before' }));
    await after(1);
    expect(schedule.counts()).toEqual({ taken: 1, failed: 0 });
  });

  it('tells once that they fail, again when they fail in another way, and that they are made again', async () => {
    const { schedule, after, goes, now, told } = byHand();
    goes(() => Promise.resolve({ what: 'taken', lastAt: now() }));
    await after(1);
    const lastAt = now();
    goes(gone);
    await after(60);
    const since = now();
    for (let i = 0; i < 3; i += 1) await after(10);
    expect(told).toEqual(['backup-folder-not-there']);
    expect(schedule.stand()).toMatchObject({ lastAt, failing: { since } });
    goes(full);
    await after(10);
    expect(schedule.stand().failing?.since).toBe(since);
    goes(() => Promise.resolve({ what: 'taken', lastAt: now() }));
    await after(10);
    expect(told).toEqual(['backup-folder-not-there', 'store-disk-full', undefined]);
    expect(schedule.stand()).toEqual({ lastAt: now() });
    expect(schedule.counts()).toEqual({ taken: 2, failed: 5 });
  });

  it('leaves the workshop alone for ten minutes after a failure, also where the clock is set back', async () => {
    const { after, goes, asked } = byHand();
    goes(gone);
    await after(0);
    for (let i = 0; i < 9; i += 1) await after(1);
    expect(asked).toHaveLength(1);
    await after(1);
    expect(asked).toHaveLength(2);
    await after(-5000);
    expect(asked).toHaveLength(3);
  });

  it('looks once at a time, and reports what nobody expected', async () => {
    const { schedule, after, goes, asked, reported } = byHand();
    let finish = (): void => undefined;
    goes(() => new Promise((_, fail) => (finish = () => fail(new Error('a bug')))));
    const both = [after(0), after(1)];
    finish();
    await Promise.all(both);
    expect(asked).toHaveLength(1);
    expect(reported).toHaveLength(1);
    expect(schedule.stand().failing?.problem.code).toBe('something-broke');
  });
});
