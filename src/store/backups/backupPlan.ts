import type { BackupRhythm } from '../../core/backups/backupsToKeep.ts';

/** Into which folder, how often, and how many stay. */
export interface BackupPlan extends BackupRhythm {
  readonly folder: string;
}
