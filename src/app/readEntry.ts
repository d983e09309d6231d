import { done, type Outcome } from '../core/problem.ts';
import { findEntry, readKept, withStanding, type EntryStanding } from './entryStanding.ts';
import type { AskingPorts } from './ports.ts';

/** One proven setting, by id or by the code on its shelf label. Refuses: `entry-not-found`. */
export const readEntry = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  idOrCode: string,
): Promise<Outcome<EntryStanding>> => {
  const read = await store.read(async (session) => {
    const found = await findEntry(session, idOrCode);
    return found.ok ? done(await readKept(session, found.value)) : found;
  });
  return read.ok ? done(await withStanding(model, read.value)) : read;
};
