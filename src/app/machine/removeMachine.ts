import { done, refused, type Outcome } from '../../core/problem.ts';
import { findMachine, ownMachines } from '../shared/machineOf.ts';
import type { Ports } from '../ports/ports.ts';

/**
 * Removes a machine that nothing is of. Where it was the default, the first of those that are left is. Refuses:
 * `machine-not-found`, `machine-in-use`, `machine-is-invented`, which goes with the example.
 */
export const removeMachine = (
  { store }: Pick<Ports, 'store'>,
  id: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    const found = await findMachine(session, id);
    if (!found.ok) return found;
    if (found.value.isExample) return refused('machine-is-invented');
    const count = await session.machineUse(id);
    if (count > 0) return refused('machine-in-use', { count });
    await session.deleteMachine(id);
    const [next] = await ownMachines(session);
    if (found.value.isDefault && next !== undefined)
      await session.replaceMachine({ ...next, isDefault: true });
    return done(undefined);
  });
