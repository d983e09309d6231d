import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';

/** Removes a reading of the four corners. Refuses: `bed-test-not-found`. */
export const removeBedTest = (
  { store }: Pick<Ports, 'store'>,
  id: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    if ((await session.bedTest(id)) === undefined) return refused('bed-test-not-found', { id });
    await session.deleteBedTest(id);
    return done(undefined);
  });
