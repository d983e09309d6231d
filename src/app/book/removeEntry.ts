import { done, type Outcome } from '../../core/problem.ts';
import { findEntry } from '../shared/entryStanding.ts';
import type { Ports } from '../ports/ports.ts';

/** Takes a proven setting out of the book. Its tallies stay with their study. Refuses: `entry-not-found`. */
export const removeEntry = (
  { store }: Pick<Ports, 'store'>,
  idOrCode: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    const found = await findEntry(session, idOrCode);
    if (!found.ok) return found;
    await session.deleteEntry(found.value.id);
    return done(undefined);
  });
