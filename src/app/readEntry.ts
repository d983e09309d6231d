import { done, type Outcome } from '../core/problem.ts';
import { findEntry, withTallies, type EntryWithTallies } from './entryWithTallies.ts';
import type { Ports } from './ports.ts';

/** One proven setting, by id or by the code on its shelf label. Refuses: `entry-not-found`. */
export const readEntry = (
  { store }: Pick<Ports, 'store'>,
  idOrCode: string,
): Promise<Outcome<EntryWithTallies>> =>
  store.read(async (session) => {
    const found = await findEntry(session, idOrCode);
    return found.ok ? done(await withTallies(session, found.value)) : found;
  });
