import { searchBook as search } from '../core/book/searchBook.ts';
import { readKept, withStanding, type EntryStanding } from './entryStanding.ts';
import type { AskingPorts } from './ports.ts';
import { remembering } from './remembering.ts';
import type { KeptQuestion } from './standingAsKnown.ts';

/** The proven settings that fit all the words, those for the sheet on the bed first. No words: the whole book. */
export const searchBook = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  text: string,
): Promise<readonly EntryStanding[]> => {
  const kept = await store.read(async (stored) => {
    const session = remembering(stored);
    const onBed = (await session.onBed())?.stock;
    const questions: KeptQuestion[] = [];
    for (const entry of search(await session.entries(), text, onBed))
      questions.push(await readKept(session, entry));
    return questions;
  });
  return Promise.all(kept.map((question) => withStanding(model, question)));
};
