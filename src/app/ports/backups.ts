import type { Problem } from '../../core/problem.ts';

/** How the backups on a schedule stand. Times: ISO 8601, UTC. */
export interface BackupsStand {
  /** When the newest that is there was made. */
  readonly lastAt?: string;
  /** The last one was not made. */
  readonly failing?: { readonly since: string; readonly problem: Problem };
}

/** What others may know of them. */
export interface BackupsSeen {
  readonly stand: () => BackupsStand;
  /** Told when they begin to fail, fail in another way, or are made again. Gives a way to stop hearing. */
  readonly hear: (listener: (stand: BackupsStand) => void) => () => void;
}
