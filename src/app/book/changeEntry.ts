import type { ProvenSetting } from '../../core/book/provenSetting.ts';
import { omit } from '../../core/omit.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { findEntry } from '../shared/entryStanding.ts';
import type { Ports } from '../ports/ports.ts';

/** What of a kept setting a person may say anew: what was proven stays as it was. */
export interface EntryChange {
  /** Null, or nothing but blanks: it is taken away. */
  readonly note: string | null;
}

/** Says the note of a kept setting anew. Refuses: `entry-not-found`. */
export const changeEntry = (
  { store }: Pick<Ports, 'store'>,
  idOrCode: string,
  { note }: EntryChange,
): Promise<Outcome<ProvenSetting>> =>
  store.change(async (session) => {
    const found = await findEntry(session, idOrCode);
    if (!found.ok) return found;
    const bare = omit(found.value, 'note');
    const entry = note === null || note.trim() === '' ? bare : { ...bare, note };
    await session.replaceEntry(entry);
    return done(entry);
  });
