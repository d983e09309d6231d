import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';

/** Takes a tally away from a study. Refuses: `study-not-found`, `tally-not-found`. */
export const removeTally = (
  { store, clock }: Ports,
  studyId: string,
  tallyId: string,
): Promise<Outcome<{ readonly revision: number }>> =>
  store.change(async (session) => {
    const found = await findStudy(session, studyId);
    if (!found.ok) return found;
    if ((await session.tally(tallyId))?.studyId !== studyId)
      return refused('tally-not-found', { id: tallyId });
    await session.deleteTally(tallyId);
    return done({ revision: await session.touch(studyId, clock.now()) });
  });
