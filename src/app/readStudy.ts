import { done, refused, type Outcome } from '../core/problem.ts';
import type { Ports, ReadSession } from './ports.ts';
import type { StoredStudy } from './stored.ts';

/** One study, whole. Refuses: `study-not-found`. */
export const readStudy = (
  { store }: Pick<Ports, 'store'>,
  id: string,
): Promise<Outcome<StoredStudy>> => store.read((session) => findStudy(session, id));

/** The same inside a session. */
export const findStudy = async (
  session: ReadSession,
  id: string,
): Promise<Outcome<StoredStudy>> => {
  const found = await session.study(id);
  return found === undefined ? refused('study-not-found', { id }) : done(found);
};
