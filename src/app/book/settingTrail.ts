import {
  takeBackProblem,
  takenBackSince,
  type SettingChange,
} from '../../core/book/settingChange.ts';
import type { Problem } from '../../core/problem.ts';
import type { ChangesAsked, Listed, Ports, ReadSession } from '../ports/ports.ts';
import { sinceChange } from './sinceChange.ts';

/** A change of a kept setting, and whether it can be taken back now. */
export interface ChangeOnTrail {
  readonly change: SettingChange;
  /** Somebody has taken it back. */
  readonly isTakenBack: boolean;
  readonly mayTakeBack: boolean;
  /** What stands against it, where it is of the last day and nothing else was done to the setting since. */
  readonly held?: Problem;
}

/** What was done to kept settings and by whom, the last first. */
export const settingTrail = (
  { store, clock }: Pick<Ports, 'store' | 'clock'>,
  asked: ChangesAsked,
): Promise<Listed<ChangeOnTrail>> =>
  store.read(async (session) => {
    const { found, total } = await session.settingChanges(asked);
    const now = clock.now();
    const lines: ChangeOnTrail[] = [];
    for (const change of found) lines.push(await onTrail(session, change, now));
    return { found: lines, total };
  });

const onTrail = async (
  session: ReadSession,
  change: SettingChange,
  now: string,
): Promise<ChangeOnTrail> => {
  const isTakenBack = (await session.undoOfChange(change.id)) !== undefined;
  const line = { change, isTakenBack, mayTakeBack: false };
  if (isTakenBack || change.at < takenBackSince(now)) return line;
  const problem = takeBackProblem(change, await sinceChange(session, change, now));
  if (problem === undefined) return { ...line, mayTakeBack: true };
  return problem.code === 'setting-changed-since' ? line : { ...line, held: problem };
};
