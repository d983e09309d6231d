import { saidBy, type Author } from '../../core/author.ts';
import type { SettingChange } from '../../core/book/settingChange.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { findEntry } from '../shared/entryStanding.ts';
import type { Ports } from '../ports/ports.ts';

/**
 * Takes a proven setting out of the book. Its tallies stay with their study. For a day it can come back
 * (`takeBackChange`). Refuses: `entry-not-found`.
 */
export const removeEntry = (
  { store, clock, ids, ...author }: Ports & Author,
  idOrCode: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    const found = await findEntry(session, idOrCode);
    if (!found.ok) return found;
    const { id: settingId } = found.value;
    const change: SettingChange = {
      version: 1,
      id: ids.newId(),
      at: clock.now(),
      settingId,
      before: found.value,
    };
    await session.noteChange(saidBy(change, author));
    await session.deleteEntry(settingId);
    return done(undefined);
  });
