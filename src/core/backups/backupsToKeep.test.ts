import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { backupNameOf, readBackupName } from './backupName.ts';
import { backupsToKeep, isBackupDue } from './backupsToKeep.ts';

const hourMs = 3_600_000;
const start = Date.parse('2031-01-01T00:00:00.000Z');
const after = (hours: number): string => new Date(start + hours * hourMs).toISOString();
const usual = { days: 14, months: 12 };

/** What lies there after so many hours of a backup an hour, thinned after each. */
const afterHours = (hours: number): readonly string[] => {
  let kept: readonly string[] = [];
  for (let hour = 0; hour < hours; hour += 1)
    kept = backupsToKeep([...kept, after(hour)], { ...usual, now: after(hour) });
  return kept;
};

describe('the backups that stay', () => {
  it('are after two years of one an hour: a day whole, a fortnight by days, a year by months', () => {
    const kept = afterHours(2 * 365 * 24);
    const newest = kept.at(-1) ?? '';
    expect(newest).toBe(after(2 * 365 * 24 - 1));
    // By hand: 24 of 30 December; the last of each of 17 to 29 December; the last of January to November.
    expect(kept).toHaveLength(24 + 13 + 11);
    expect(kept.slice(0, 3)).toEqual([
      '2032-01-31T23:00:00.000Z',
      '2032-02-29T23:00:00.000Z',
      '2032-03-31T23:00:00.000Z',
    ]);
    expect(kept[11]).toBe('2032-12-17T23:00:00.000Z');
  });

  it('are not fewer for a year in which the workshop was shut', () => {
    const before = afterHours(40 * 24);
    const now = after(500 * 24);
    const kept = backupsToKeep([...before, now], { ...usual, now });
    expect(before.filter((at) => !kept.includes(at)).length).toBeLessThanOrEqual(24);
    expect(kept.filter((at) => at !== now).length).toBeGreaterThanOrEqual(13);
  });

  const times = fc
    .uniqueArray(fc.integer({ min: 0, max: 20_000 }), { maxLength: 200 })
    .map((hours) => hours.map(after));

  it('have the newest, all of its day, and never more than the numbers allow; twice is as once', () => {
    fc.assert(
      fc.property(times, fc.integer({ min: 0, max: 21_000 }), (there, hour) => {
        const now = after(hour);
        const kept = backupsToKeep(there, { ...usual, now });
        const past = there.filter((at) => at <= now).sort();
        const newest = past.at(-1);
        expect(there).toEqual(expect.arrayContaining([...kept]));
        if (newest !== undefined) expect(kept).toContain(newest);
        const dayBefore = Date.parse(newest ?? now) - 24 * hourMs;
        const older = kept.filter((at) => at <= now && Date.parse(at) <= dayBefore);
        expect(older.length).toBeLessThanOrEqual(usual.days + usual.months);
        for (const at of past) if (Date.parse(at) > dayBefore) expect(kept).toContain(at);
        for (const at of there) if (at > now) expect(kept).toContain(at);
        expect(backupsToKeep(kept, { ...usual, now })).toEqual(kept);
      }),
    );
  });
});

describe('when another is due', () => {
  it('is when the last is as old as was asked, whatever a wrong clock has left', () => {
    const due = (there: readonly string[], now: string) =>
      isBackupDue(there, { now, everyHours: 2 });
    expect(due([], after(0))).toBe(true);
    expect(due([after(0)], after(1.9))).toBe(false);
    expect(due([after(0)], after(2))).toBe(true);
    expect(due([after(0), after(9000)], after(2))).toBe(true);
  });
});

describe('the name of a backup', () => {
  it('tells its time and its workshop, and is read as it was written', () => {
    expect(backupNameOf({ workshop: '0a1b2c3d', at: '2031-06-07T08:09:10.123Z' })).toBe(
      'throughcut-0a1b2c3d-20310607T080910Z.sqlite',
    );
    fc.assert(
      fc.property(fc.date({ min: new Date(0), max: new Date('9000-01-01') }), (date) => {
        if (Number.isNaN(date.getTime())) return;
        const at = `${date.toISOString().slice(0, 19)}.000Z`;
        const name = { workshop: 'ffffffff', at };
        expect(readBackupName(backupNameOf(name))).toEqual(name);
      }),
    );
  });

  it.each([
    'workshop.sqlite',
    'throughcut-0a1b2c3d-20310607T080910Z.sqlite.part',
    'my throughcut-0a1b2c3d-20310607T080910Z.sqlite',
    'throughcut-0a1b2c3d-20310231T080910Z.sqlite',
    'throughcut-0a1b2c3d-20310607T080910Z.sqlite (copy)',
    'throughcut-mine-20310607T080910Z.sqlite',
  ])('is none of ours: %s', (name) => {
    expect(readBackupName(name)).toBeUndefined();
  });
});
