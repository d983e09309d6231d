import { saidBy, type Author } from '../../core/author.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { RecordedTally } from '../../core/study/study.ts';
import type { Ports } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';
import { storeTally } from '../shared/storeTally.ts';

/** A tally whose id and time may be left to the tool. */
export type TallyToRecord = Omit<RecordedTally, 'id' | 'at' | 'by' | 'correctedBy'> & {
  readonly id?: string;
  readonly at?: string;
};

export interface TallyRecorded {
  readonly tally: RecordedTally;
  readonly revision: number;
}

/**
 * Adds the count of an order to a study. The same tally sent twice is stored once.
 * Refuses: `study-not-found`, `entry-not-found`, `tally-id-taken`.
 */
export const recordTally = (
  { store, clock, ids, ...author }: Ports & Author,
  studyId: string,
  asked: TallyToRecord,
): Promise<Outcome<TallyRecorded>> =>
  store.change(async (session) => {
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    const entryId = asked.provenSettingId;
    if (entryId !== undefined && (await session.entry(entryId))?.id !== entryId)
      return refused('entry-not-found', { id: entryId });
    const now = clock.now();
    const counted = { ...asked, id: asked.id ?? ids.newId(), at: asked.at ?? now };
    const tally = saidBy<RecordedTally>(counted, author);
    const stored = await storeTally(session, studyId, tally, asked);
    if (!stored.ok) return stored;
    const revision = stored.value.isNew ? await session.touch(studyId, now) : found.value.revision;
    return done({ tally: stored.value.tally, revision });
  });
