import { describe, expect, it } from 'vitest';
import { backupPlan } from './backupPlan.ts';

describe('the plan of backups', () => {
  it('is none without a folder, and sound without more than that', () => {
    expect(backupPlan({})).toEqual({ ok: true, value: undefined });
    expect(backupPlan({ THROUGHCUT_BACKUP: ' ' })).toEqual({ ok: true, value: undefined });
    expect(backupPlan({ THROUGHCUT_BACKUP: '/b' })).toEqual({
      ok: true,
      value: { folder: '/b', everyHours: 1, days: 14, months: 12 },
    });
  });

  it.each(['0', '-1', '1.5', '1h', '169'])('refuses %s hours in words', (given) => {
    expect(backupPlan({ THROUGHCUT_BACKUP: '/b', THROUGHCUT_BACKUP_HOURS: given })).toMatchObject({
      ok: false,
      problem: { code: 'setting-not-a-number', params: { name: 'THROUGHCUT_BACKUP_HOURS' } },
    });
  });

  it('takes a relative folder from where it was called', () => {
    const plan = backupPlan({ THROUGHCUT_BACKUP: 'b', INIT_CWD: '/w' });
    expect(plan.ok && plan.value?.folder).toBe('/w/b');
  });
});
