import type { BackupsSeen, BackupsStand } from '../../app/ports/backups.ts';
import type { Clock } from '../../app/ports/ports.ts';
import { problemOf, type Problem } from '../../core/problem.ts';
import type { BackupLook } from './takeBackup.ts';

export interface BackupScheduleOptions {
  readonly clock: Clock;
  /** Makes one where it is due. */
  readonly look: (now: string) => Promise<BackupLook>;
  /** Told of what nobody expected. */
  readonly report: (error: unknown) => void;
}

export interface BackupSchedule extends BackupsSeen {
  /** How many were made, and how often one was not, since it was opened. */
  readonly counts: () => { readonly taken: number; readonly failed: number };
  /** Looks whether one is due. One look at a time; after a failure not again for ten minutes. */
  readonly look: () => Promise<void>;
}

/** After what has failed the workshop is left alone for a while: a copy of it is no small thing. */
const againMinutes = 10;

export const openBackupSchedule = ({
  clock,
  look,
  report,
}: BackupScheduleOptions): BackupSchedule => {
  const listeners = new Set<(stand: BackupsStand) => void>();
  const changed = (): void => {
    for (const listener of listeners) listener(stand);
  };
  let stand: BackupsStand = {};
  let [taken, failed] = [0, 0];
  let looking: Promise<void> | undefined;
  let notBefore = '';

  const succeeded = ({ what, lastAt }: BackupLook): void => {
    if (what === 'taken') taken += 1;
    const wasFailing = stand.failing !== undefined;
    stand = lastAt === undefined ? {} : { lastAt };
    if (wasFailing) changed();
  };
  const failedBy = (thrown: unknown, now: string): void => {
    const problem = problemIn(thrown);
    if (problem === undefined) report(thrown);
    failed += 1;
    notBefore = new Date(Date.parse(now) + againMinutes * 60_000).toISOString();
    const before = stand.failing;
    const said = problem ?? problemOf('something-broke');
    stand = { ...stand, failing: { since: before?.since ?? now, problem: said } };
    if (before?.problem.code !== said.code) changed();
  };
  const once = async (now: string): Promise<void> => {
    try {
      succeeded(await look(now));
    } catch (thrown) {
      failedBy(thrown, now);
    } finally {
      looking = undefined;
    }
  };

  return {
    stand: () => stand,
    hear: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    counts: () => ({ taken, failed }),
    look: async () => {
      const now = clock.now();
      // A clock that was set back does not keep it waiting for longer than that.
      const waits =
        now < notBefore && Date.parse(notBefore) - Date.parse(now) <= againMinutes * 60_000;
      if (waits) return;
      await (looking ??= once(now));
    },
  };
};

const problemIn = (thrown: unknown): Problem | undefined =>
  thrown instanceof Error && 'problem' in thrown ? (thrown.problem as Problem) : undefined;
