import { saidBy, type Author } from '../../core/author.ts';
import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import type { SettingChange } from '../../core/book/settingChange.ts';
import { omit } from '../../core/omit.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { findEntry } from '../shared/entryStanding.ts';
import type { Ports } from '../ports/ports.ts';

/** What of a kept setting a person may say anew: what was proven stays as it was. */
export interface EntryChange {
  /** Null, or nothing but blanks: it is taken away. */
  readonly note: string | null;
}

/** Says the note of a kept setting anew; where it says something else, that is noted as a change. Refuses: `entry-not-found`. */
export const changeEntry = (
  { store, clock, ids, ...author }: Ports & Author,
  idOrCode: string,
  { note }: EntryChange,
): Promise<Outcome<ProvenSetting>> =>
  store.change(async (session) => {
    const found = await findEntry(session, idOrCode);
    if (!found.ok) return found;
    const bare = omit(found.value, 'note');
    const entry: ProvenSetting = note === null || note.trim() === '' ? bare : { ...bare, note };
    if (entry.note === found.value.note) return done(entry);
    await session.replaceEntry(entry);
    const change: SettingChange = {
      version: 1,
      id: ids.newId(),
      at: clock.now(),
      settingId: entry.id,
      before: found.value,
      after: entry,
    };
    await session.noteChange(saidBy(change, author));
    return done(entry);
  });
