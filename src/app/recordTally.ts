import { sameValue } from './sameValue.ts';
import { done, refused, type Outcome } from '../core/problem.ts';
import type { RecordedTally } from '../core/study/study.ts';
import type { Ports, Session } from './ports.ts';
import { findStudy } from './readStudy.ts';

/** A tally whose id and time may be left to the tool. */
export type TallyToRecord = Omit<RecordedTally, 'id' | 'at'> & {
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
  { store, clock, ids }: Ports,
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
    const tally = { ...asked, id: asked.id ?? ids.newId(), at: asked.at ?? now };
    const stored = await storeTally(session, studyId, tally, asked);
    if (!stored.ok) return stored;
    const revision = stored.value.isNew ? await session.touch(studyId, now) : found.value.revision;
    return done({ tally: stored.value.tally, revision });
  });

/**
 * Stores a tally, or finds that this very one is there. Where the time was left to the tool it is not compared.
 * Refuses: `tally-id-taken`.
 */
export const storeTally = async (
  session: Session,
  studyId: string | undefined,
  tally: RecordedTally,
  asked: { readonly at?: string },
): Promise<Outcome<{ readonly tally: RecordedTally; readonly isNew: boolean }>> => {
  const known = await session.tally(tally.id);
  if (known === undefined) {
    await session.insertTally(studyId, tally);
    return done({ tally, isNew: true });
  }
  const compared = asked.at === undefined ? { ...tally, at: known.tally.at } : tally;
  return known.studyId === studyId && sameValue(known.tally, compared)
    ? done({ tally: known.tally, isNew: false })
    : refused('tally-id-taken', { id: tally.id });
};
