import { done, type Outcome } from '../core/problem.ts';
import type { Ports } from './ports.ts';
import { findStudy } from './readStudy.ts';

/**
 * Removes a study with its cards, readings and tallies. What was kept in the book stays there, with its tallies.
 * Refuses: `study-not-found`.
 */
export const removeStudy = (
  { store }: Pick<Ports, 'store'>,
  id: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    const found = await findStudy(session, id);
    if (!found.ok) return found;
    await session.deleteStudy(id);
    return done(undefined);
  });
