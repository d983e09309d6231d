import { saidBy, type Author } from '../../core/author.ts';
import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import { takeBackProblem, type SettingChange } from '../../core/book/settingChange.ts';
import { omit } from '../../core/omit.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports, Session } from '../ports/ports.ts';
import { sinceChange } from './sinceChange.ts';

/**
 * Takes a change of a kept setting back, within a day: the setting stands as it stood before, and that is a change of its
 * own, with its author. Sent twice, or by two at once, it is taken back once. Refuses: `setting-change-not-found`,
 * `setting-change-over`, `setting-changed-since`, `setting-built-on`, `setting-code-taken`, `setting-machine-gone`.
 */
export const takeBackChange = (
  { store, clock, ids, ...author }: Pick<Ports, 'store' | 'clock' | 'ids'> & Author,
  changeId: string,
): Promise<Outcome<SettingChange>> =>
  store.change(async (session) => {
    const change = await session.settingChange(changeId);
    if (change === undefined) return refused('setting-change-not-found', { id: changeId });
    const now = clock.now();
    const undo = await session.undoOfChange(changeId);
    if (undo !== undefined && (await sinceChange(session, undo, now)).isLast) return done(undo);
    const problem = takeBackProblem(change, await sinceChange(session, change, now));
    if (problem !== undefined) return { ok: false, problem };
    const { settingId } = change;
    const present = await session.entry(settingId);
    const restored = restoredFrom(change, present);
    const made = saidBy<SettingChange>(
      {
        version: 1,
        id: ids.newId(),
        at: now,
        settingId,
        ...(change.after === undefined || present === undefined ? {} : { before: present }),
        ...(restored === undefined ? {} : { after: restored }),
        undoes: changeId,
      },
      author,
    );
    await carryOut(session, change, made);
    return done(made);
  });

/** As it stood before; of one that is in the book what may be said anew, and no more. */
const restoredFrom = (
  { before, after }: SettingChange,
  present: ProvenSetting | undefined,
): ProvenSetting | undefined => {
  if (before === undefined || after === undefined || present === undefined) return before;
  const bare = omit(present, 'note');
  return before.note === undefined ? bare : { ...bare, note: before.note };
};

const carryOut = async (
  session: Session,
  change: SettingChange,
  made: SettingChange,
): Promise<void> => {
  if (made.after === undefined) {
    await session.noteChange(made);
    await session.deleteEntry(made.settingId);
    return;
  }
  if (made.before === undefined) await session.putBackEntry(change.id, made.after);
  else await session.replaceEntry(made.after);
  await session.noteChange(made);
};
