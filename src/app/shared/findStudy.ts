import { done, refused, type Outcome } from '../../core/problem.ts';
import type { ReadSession } from '../ports/ports.ts';
import type { StoredStudy } from '../ports/stored.ts';

/** One study, whole, inside a session. Refuses: `study-not-found`. */
export const findStudy = async (
  session: ReadSession,
  id: string,
): Promise<Outcome<StoredStudy>> => {
  const found = await session.study(id);
  return found === undefined ? refused('study-not-found', { id }) : done(found);
};
