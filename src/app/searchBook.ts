import { searchBook as search } from '../core/book/searchBook.ts';
import { withStanding, type EntryStanding } from './entryStanding.ts';
import type { Ports } from './ports.ts';
import { remembering } from './remembering.ts';

/** The proven settings that fit all the words, those for the sheet on the bed first. No words: the whole book. */
export const searchBook = (
  { store }: Pick<Ports, 'store'>,
  text: string,
): Promise<readonly EntryStanding[]> =>
  store.read(async (stored) => {
    const session = remembering(stored);
    const onBed = (await session.onBed())?.stock;
    const found: EntryStanding[] = [];
    for (const entry of search(await session.entries(), text, onBed))
      found.push(await withStanding(session, entry));
    return found;
  });
