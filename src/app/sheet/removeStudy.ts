import { omit } from '../../core/omit.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';

/**
 * Removes a study with its cards, readings and tallies; it can come back (`putBackStudy`). What was kept in the book stays
 * there, with its tallies. One that was removed before stays so. Refuses: `study-not-found`.
 */
export const removeStudy = (
  { store, clock }: Pick<Ports, 'store' | 'clock'>,
  id: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    const found = await session.studyAsReadable(id);
    if (found === undefined) {
      const isRemoved = (await session.removedStudies()).some(({ study }) => study.id === id);
      return isRemoved ? done(undefined) : refused('study-not-found', { id });
    }
    const study = omit(found.study, 'machine', 'machineChanges');
    await session.keepRemoved({ study, removedAt: clock.now() });
    await session.deleteStudy(id);
    return done(undefined);
  });
