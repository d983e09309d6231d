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

/** Which settings, and for how long. */
interface BookAsked extends Omit<EntriesAsked, 'sought' | 'onBed'> {
  /** From then on what takes a sum is not known. Absent: all sums are waited for. */
  readonly isOver?: () => boolean;
}

/** So many are read at once: a page. What was read for it is forgotten before the next, and other sessions take their turn. */
const readAtOnce = 25;

/** So many standings are asked for at once: a long book does not fill the queue for everybody else. */
const askedAtOnce = 4;

/**
 * The proven settings that fit all the words, those for the sheet on the bed first. No words: the whole book. Only those in
 * the stretch are read, and it is looked up how they stand: a page of a long book costs what a page of a short one does.
 */
export const searchBook = async (
  { store, model }: Pick<AskingPorts, 'store' | 'model'>,
  text: string,
  { isOver = () => false, ...asked }: BookAsked = {},
): Promise<BookFound> => {
  const { found, total } = await store.read(async (session) => {
    const onBed = (await session.onBed())?.stock;
    return session.listEntries({
      ...asked,
      sought: soughtIn(text),
      ...(onBed === undefined ? {} : { onBed }),
    });
  });
  const entries: EntryStanding[] = [];
  for (const page of inStretches(found, readAtOnce)) {
    const questions = await store.read(async (stored) => {
      const session = remembering(stored);
      const kept: KeptQuestion[] = [];
      for (const entry of page)
        kept.push(await readKept(session, entry, isOver() ? 'unread' : 'read'));
      return kept;
    });
    for (const some of inStretches(questions, askedAtOnce))
      entries.push(...(await Promise.all(some.map((question) => withStanding(model, question)))));
  }
  return { entries, total };
};

const inStretches = <T>(all: readonly T[], most: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(all.length / most) }, (_, i) =>
    all.slice(i * most, (i + 1) * most),
  );
