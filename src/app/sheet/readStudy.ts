import type { Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';
import type { StoredStudy } from '../ports/stored.ts';
import { findStudy } from '../shared/findStudy.ts';

/** One study, whole. Refuses: `study-not-found`. */
export const readStudy = (
  { store }: Pick<Ports, 'store'>,
  id: string,
): Promise<Outcome<StoredStudy>> => store.read((session) => findStudy(session, id));
