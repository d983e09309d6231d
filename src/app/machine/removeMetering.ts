import { done, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';
import { findMetering } from './readMetering.ts';

/** Removes a metering. Machines that were given its curve keep it. Refuses: `metering-not-found`. */
export const removeMetering = (
  { store }: Pick<Ports, 'store'>,
  id: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    const found = await findMetering(session, id);
    if (!found.ok) return found;
    await session.deleteMetering(id);
    return done(undefined);
  });
