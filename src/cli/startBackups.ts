import { systemClock } from '../host/clock.ts';
import type { StorePlace } from '../host/storePlace.ts';
import type { BackupPlan } from '../store/backups/backupPlan.ts';
import { openBackupSchedule, type BackupSchedule } from '../store/backups/backupSchedule.ts';
import { takeBackupInThread } from '../store/backups/inThread.ts';
import type { Voice } from './voice.ts';

/** How often it is looked whether one is due: a computer that slept makes up for it soon. */
const lookEveryMs = 60_000;

/** Makes backups by the plan until it is told to stop, and says when they fail. */
export const startBackups = (
  place: StorePlace,
  plan: BackupPlan,
  voice: Voice,
): BackupSchedule & { readonly stop: () => Promise<void> } => {
  const stopped = new AbortController();
  const schedule = openBackupSchedule({
    clock: systemClock,
    look: (now) => takeBackupInThread({ place, plan, now }, stopped.signal),
    report: voice.broke,
  });
  schedule.hear(voice.backups);
  let looking = schedule.look();
  const timer = setInterval(() => {
    looking = schedule.look();
  }, lookEveryMs);
  return {
    ...schedule,
    stop: async () => {
      clearInterval(timer);
      stopped.abort();
      await looking;
    },
  };
};
