import { done, refused, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';

/** Removes a focus test. Refuses: `focus-test-not-found`. */
export const removeFocusTest = (
  { store }: Pick<Ports, 'store'>,
  id: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    if ((await session.focusTest(id)) === undefined) return refused('focus-test-not-found', { id });
    await session.deleteFocusTest(id);
    return done(undefined);
  });
