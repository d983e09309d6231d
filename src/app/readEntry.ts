import { done, type Outcome } from '../core/problem.ts';
import { findEntry, withStanding, type EntryStanding } from './entryStanding.ts';
import type { Ports } from './ports.ts';

/** One proven setting, by id or by the code on its shelf label. Refuses: `entry-not-found`. */
export const readEntry = (
  { store }: Pick<Ports, 'store'>,
  idOrCode: string,
): Promise<Outcome<EntryStanding>> =>
  store.read(async (session) => {
    const found = await findEntry(session, idOrCode);
    return found.ok ? done(await withStanding(session, found.value)) : found;
  });
