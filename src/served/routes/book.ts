import type { EntryStanding } from '../../app/shared/entryStanding.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { problemInWords } from '../../words/words.ts';
import { standingInWords } from '../../words/standingInWords.ts';
import { api, type ReplyOf } from '../../wire/api.ts';
import type { Site } from '../site.ts';
import { goneOrAfter, pagePatienceMs } from '../patience.ts';
import type { ServedPorts } from '../servedPorts.ts';

/** The verbs here load the distributions, or the cut model, when they are first asked: the server starts without. */
export const bookRoutes = (site: Site, ports: ServedPorts): void => {
  site.put(api.searchBook, async ({ query, gone }) => {
    const { searchBook } = await import('../../app/book/searchBook.ts');
    const { text = '', ...stretch } = query;
    const patient = goneOrAfter(gone, pagePatienceMs);
    const isOver = (): boolean => patient.aborted;
    const { entries, total } = await searchBook(ports.until(patient), text, { ...stretch, isOver });
    return done({ entries: entries.map(spoken), total });
  });
  site.put(api.keptLike, async ({ query }) => {
    const { keptLike } = await import('../../app/book/keptLike.ts');
    const kept = await keptLike(ports, query.studyId);
    return kept.ok ? done({ entries: kept.value }) : kept;
  });
  site.put(api.getEntry, async ({ params, gone }) => {
    const { readEntry } = await import('../../app/book/readEntry.ts');
    const read = await readEntry(ports.until(gone), params.id);
    if (!read.ok) return read;
    const { onBed, ...found } = read.value;
    if (onBed === undefined) return done(spoken(found));
    const { stock, differs } = onBed;
    return done({
      ...spoken(found),
      onBed: { stock, differs: differs.map((problem) => problemInWords(problem)) },
    });
  });
  site.put(api.keepSetting, async ({ body, gone, author }) => {
    const { keepSetting } = await import('../../app/book/keepSetting.ts');
    return saidOf(await keepSetting({ ...ports.until(gone), ...author }, body));
  });
  site.put(api.changeEntry, async ({ params, body, author }) => {
    const { changeEntry } = await import('../../app/book/changeEntry.ts');
    const changed = await changeEntry({ ...ports, ...author }, params.id, body);
    return changed.ok ? done({ entry: changed.value }) : changed;
  });
  site.put(api.removeEntry, async ({ params, author }) => {
    const { removeEntry } = await import('../../app/book/removeEntry.ts');
    const removed = await removeEntry({ ...ports, ...author }, params.id);
    return removed.ok ? done({ removed: true }) : removed;
  });
  site.put(api.tallyEntry, async ({ params, body, gone, author }) => {
    const { tallyEntry } = await import('../../app/order/tallyEntry.ts');
    return saidOf(await tallyEntry({ ...ports.until(gone), ...author }, params.id, body));
  });
};

const spoken = (found: EntryStanding) => ({
  ...found,
  standing: standingInWords(found.standing),
});

const saidOf = (found: Outcome<EntryStanding>): Outcome<ReplyOf<typeof api.keepSetting>> =>
  found.ok ? done(spoken(found.value)) : found;
