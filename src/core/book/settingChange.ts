import type { Author } from '../author.ts';
import { problemOf, type Problem } from '../problem.ts';
import type { ProvenSetting } from './provenSetting.ts';

/**
 * One thing that was done to a kept setting: how it stood before, and after. Changes are only ever added; one that takes
 * another back is a change itself.
 */
export interface SettingChange extends Author {
  readonly version: 1;
  readonly id: string;
  /** ISO 8601, UTC, by the clock of where it is stored. */
  readonly at: string;
  readonly settingId: string;
  /** Absent: it was not in the book. */
  readonly before?: ProvenSetting;
  /** Absent: it is not in the book any more. */
  readonly after?: ProvenSetting;
  /** The change that this one takes back. */
  readonly undoes?: string;
}

export const settingChangeKinds = ['kept', 'noted', 'removed'] as const;
export type SettingChangeKind = (typeof settingChangeKinds)[number];

/** What was done: the setting came into the book, had its note said anew, or went. */
export const kindOfChange = ({ before, after }: SettingChange): SettingChangeKind =>
  before === undefined ? 'kept' : after === undefined ? 'removed' : 'noted';

/** The setting that a change is of, as it stood last in it. */
export const settingOfChange = ({ before, after }: SettingChange): ProvenSetting | undefined =>
  after ?? before;

/** For so long a change can be taken back. */
export const takeBackHours = 24;

/** ISO 8601, UTC: what was done before this moment stays. */
export const takenBackSince = (now: string): string =>
  new Date(Date.parse(now) - takeBackHours * 3_600_000).toISOString();

/** What has happened since a change, as far as it stands against taking the change back. */
export interface SinceChange {
  /** ISO 8601, UTC. */
  readonly now: string;
  /** No later change is of the same setting. */
  readonly isLast: boolean;
  /** The setting is in the book now. */
  readonly isThere: boolean;
  /** What was made with the setting and would be lost, or stand without it. */
  readonly builtOn: { readonly counts: number; readonly strips: number; readonly photos: number };
  /** Another card or setting has its code by now. */
  readonly isCodeTaken: boolean;
  /** Its machine is gone. */
  readonly isMachineGone: boolean;
}

/** Why a change is not taken back; nothing where it may be. O(1). */
export const takeBackProblem = (
  change: SettingChange,
  { now, isLast, isThere, builtOn, isCodeTaken, isMachineGone }: SinceChange,
): Problem | undefined => {
  const code = settingOfChange(change)?.code ?? '';
  if (change.at < takenBackSince(now))
    return problemOf('setting-change-over', { code, hours: takeBackHours });
  if (!isLast || isThere !== (change.after !== undefined))
    return problemOf('setting-changed-since', { code });
  if (change.before === undefined) {
    const { counts, strips, photos } = builtOn;
    return counts + strips + photos > 0
      ? problemOf('setting-built-on', { code, counts, strips, photos })
      : undefined;
  }
  if (change.after !== undefined) return undefined;
  if (isCodeTaken) return problemOf('setting-code-taken', { code });
  return isMachineGone ? problemOf('setting-machine-gone', { code }) : undefined;
};
