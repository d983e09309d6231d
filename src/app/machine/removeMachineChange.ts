import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { findMachine } from '../shared/machineOf.ts';
import type { Ports } from '../ports/ports.ts';

/** Takes a change of a machine back, as if it had never been noted; one that is not there is back already. Refuses: `machine-not-found`. */
export const removeMachineChange = (
  { store }: Pick<Ports, 'store'>,
  machineId: string,
  changeId: string,
): Promise<Outcome<WorkshopMachine>> =>
  store.change(async (session) => {
    const found = await findMachine(session, machineId);
    if (!found.ok) return found;
    const changes = found.value.changes.filter(({ id }) => id !== changeId);
    const machine = { ...found.value, changes };
    await session.replaceMachine(machine);
    return done(machine);
  });
