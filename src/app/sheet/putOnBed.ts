import { done, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';
import { findStudy } from '../shared/findStudy.ts';

/** Says that a sheet lies on the bed now. Refuses: `study-not-found`. */
export const putOnBed = (
  { store, clock }: Pick<Ports, 'store' | 'clock'>,
  id: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    const found = await findStudy(session, id);
    if (!found.ok) return found;
    await session.putOnBed(id, clock.now());
    return done(undefined);
  });
