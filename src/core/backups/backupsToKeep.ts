/** How often, and how many. */
export interface BackupRhythm {
  readonly everyHours: number;
  /** Of so many days, one each. */
  readonly days: number;
  /** Of so many months, one each. */
  readonly months: number;
}

const dayMs = 24 * 3_600_000;

/**
 * Which backups stay: all of the 24 hours before the newest; the last of each of the latest days that have any; the last of
 * each of the latest months that have any. Counted by days that have one, so that a workshop that was shut for a year loses
 * none. What bears a time that has not come yet (a clock was wrong) stays and counts for nothing. Times: ISO 8601, UTC.
 */
export const backupsToKeep = (
  times: readonly string[],
  { now, days, months }: Pick<BackupRhythm, 'days' | 'months'> & { readonly now: string },
): readonly string[] => {
  const past = times.filter((at) => at <= now).sort();
  const newest = past.at(-1);
  if (newest === undefined) return times;
  const keep = new Set([
    ...times.filter((at) => at > now),
    ...past.filter((at) => Date.parse(at) > Date.parse(newest) - dayMs),
    ...lastOfEach(past, dayOf).slice(-days),
    ...lastOfEach(past, monthOf).slice(-months),
    newest,
  ]);
  return times.filter((at) => keep.has(at));
};

/** Whether it is time for another. */
export const isBackupDue = (
  times: readonly string[],
  { now, everyHours }: Pick<BackupRhythm, 'everyHours'> & { readonly now: string },
): boolean => {
  const since = new Date(Date.parse(now) - everyHours * 3_600_000).toISOString();
  return !times.some((at) => at > since && at <= now);
};

const dayOf = (at: string): string => at.slice(0, 10);
const monthOf = (at: string): string => at.slice(0, 7);

/** Sorted times, the last of each day or month. */
const lastOfEach = (times: readonly string[], of: (at: string) => string): readonly string[] =>
  times.filter((at, i) => {
    const next = times[i + 1];
    return next === undefined || of(next) !== of(at);
  });
