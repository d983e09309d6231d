import { searchBook as search } from '../core/book/searchBook.ts';
import { withTallies, type EntryWithTallies } from './entryWithTallies.ts';
import type { Ports } from './ports.ts';

/** The proven settings that fit all the words, those for the sheet on the bed first. No words: the whole book. */
export const searchBook = (
  { store }: Pick<Ports, 'store'>,
  text: string,
): Promise<readonly EntryWithTallies[]> =>
  store.read(async (session) => {
    const onBed = (await session.latest())?.stock;
    const found: EntryWithTallies[] = [];
    for (const entry of search(await session.entries(), text, onBed))
      found.push(await withTallies(session, entry));
    return found;
  });
