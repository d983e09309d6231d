import { done, refused, type Outcome } from '../core/problem.ts';
import { fromWhereCalled } from '../host/paths.ts';
import type { BackupPlan } from '../store/backups/backupPlan.ts';

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * The plan that THROUGHCUT_BACKUP asks for by naming a folder: a backup every hour, of which all of a day stay, one a day for a
 * fortnight, one a month for a year; or as THROUGHCUT_BACKUP_HOURS, _DAYS and _MONTHS say. Undefined: none is asked for. Refuses:
 * `setting-not-a-number`.
 */
export const backupPlan = (
  environment: Environment = process.env,
): Outcome<BackupPlan | undefined> => {
  const folder = environment['THROUGHCUT_BACKUP']?.trim() ?? '';
  if (folder === '') return done(undefined);
  const everyHours = whole(environment, 'THROUGHCUT_BACKUP_HOURS', {
    usual: 1,
    least: 1,
    most: 168,
  });
  if (!everyHours.ok) return everyHours;
  const days = whole(environment, 'THROUGHCUT_BACKUP_DAYS', { usual: 14, least: 1, most: 3650 });
  if (!days.ok) return days;
  const months = whole(environment, 'THROUGHCUT_BACKUP_MONTHS', {
    usual: 12,
    least: 1,
    most: 1200,
  });
  if (!months.ok) return months;
  return done({
    folder: fromWhereCalled(folder, environment),
    everyHours: everyHours.value,
    days: days.value,
    months: months.value,
  });
};

const whole = (
  environment: Environment,
  name: string,
  { usual, least, most }: { readonly usual: number; readonly least: number; readonly most: number },
): Outcome<number> => {
  const given = environment[name]?.trim() ?? '';
  if (given === '') return done(usual);
  const asked = Number(given);
  return /^\d+$/.test(given) && asked >= least && asked <= most
    ? done(asked)
    : refused('setting-not-a-number', { name, given, least, most });
};
