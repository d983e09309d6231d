import { omit } from '../../core/omit.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { sameValue } from '../../core/sameValue.ts';
import type { RecordedTally } from '../../core/study/study.ts';
import type { Session } from '../ports/ports.ts';

/**
 * Stores a tally, or finds that this very one is there. Where the time was left to the tool it is not compared, nor who
 * sent it again.
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
  return known.studyId === studyId && sameValue(said(known.tally), said(compared))
    ? done({ tally: known.tally, isNew: false })
    : refused('tally-id-taken', { id: tally.id });
};

const said = (tally: RecordedTally) => omit(tally, 'by', 'correctedBy');
