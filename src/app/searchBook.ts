import { searchBook as search } from '../core/book/searchBook.ts';
import { readKept, withStanding, type EntryStanding } from './entryStanding.ts';
import type { AskingPorts } from './ports.ts';
import { remembering } from './remembering.ts';
import type { KeptQuestion } from './standingAsKnown.ts';

/** A stretch of a list. */
export interface Stretch {
  /** Absent: from the first. */
  readonly from?: number;
  /** Absent: to the last. */
  readonly limit?: number;
}

export interface BookFound {
  readonly entries: readonly EntryStanding[];
  /** How many fit, shown or not. */
  readonly total: number;
}

/** So many standings are asked for at once: a long book does not fill the queue for everybody else. */
const askedAtOnce = 4;

/**
 * The proven settings that fit all the words, those for the sheet on the bed first. No words: the whole book. Only of those
 * in the stretch it is looked up how they stand: a page of a long book costs what a page of a short one does, beside reading
 * the entries themselves.
 */
export const searchBook = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  text: string,
  { from = 0, limit }: Stretch = {},
): Promise<BookFound> => {
  const { total, questions } = await store.read(async (stored) => {
    const session = remembering(stored);
    const onBed = (await session.onBed())?.stock;
    const fitting = search(await session.entries(), text, onBed);
    const kept: KeptQuestion[] = [];
    for (const entry of fitting.slice(from, limit === undefined ? undefined : from + limit))
      kept.push(await readKept(session, entry));
    return { total: fitting.length, questions: kept };
  });
  const entries: EntryStanding[] = [];
  for (let at = 0; at < questions.length; at += askedAtOnce) {
    const some = questions.slice(at, at + askedAtOnce);
    entries.push(...(await Promise.all(some.map((question) => withStanding(model, question)))));
  }
  return { entries, total };
};
