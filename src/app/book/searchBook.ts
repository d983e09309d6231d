import { soughtIn } from '../../core/search/sought.ts';
import { readKept, withStanding, type EntryStanding } from '../shared/entryStanding.ts';
import type { AskingPorts, EntriesAsked } from '../ports/ports.ts';
import { remembering } from '../ports/remembering.ts';
import type { KeptQuestion } from '../sums/standingAsKnown.ts';

export interface BookFound {
  readonly entries: readonly EntryStanding[];
  /** How many fit, shown or not. */
  readonly total: number;
}

/** So many standings are asked for at once: a long book does not fill the queue for everybody else. */
const askedAtOnce = 4;

/**
 * The proven settings that fit all the words, those for the sheet on the bed first. No words: the whole book. Only those in
 * the stretch are read, and it is looked up how they stand: a page of a long book costs what a page of a short one does.
 */
export const searchBook = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  text: string,
  asked: Omit<EntriesAsked, 'sought' | 'onBed'> = {},
): Promise<BookFound> => {
  const { total, questions } = await store.read(async (stored) => {
    const session = remembering(stored);
    const onBed = (await session.onBed())?.stock;
    const { found, total: fitting } = await session.listEntries({
      ...asked,
      sought: soughtIn(text),
      ...(onBed === undefined ? {} : { onBed }),
    });
    const kept: KeptQuestion[] = [];
    for (const entry of found) kept.push(await readKept(session, entry));
    return { total: fitting, questions: kept };
  });
  const entries: EntryStanding[] = [];
  for (let at = 0; at < questions.length; at += askedAtOnce) {
    const some = questions.slice(at, at + askedAtOnce);
    entries.push(...(await Promise.all(some.map((question) => withStanding(model, question)))));
  }
  return { entries, total };
};
