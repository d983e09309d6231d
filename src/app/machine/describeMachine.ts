import type { Machine } from '../../core/machine/machine.ts';
import { defaultMachineId, type WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import { addMachine, defaultMachine, ownMachines } from '../shared/machineOf.ts';
import type { Ports, Session } from '../ports/ports.ts';

export interface MachineDescribed {
  readonly addedAt?: string;
  /** Absent: it stays as it is. */
  readonly machine?: Machine;
  /** Makes it the one that sheets are begun on. */
  readonly isDefault?: true;
}

/**
 * Says what is known of a machine, for every sheet of it at once; an id that is not known yet is another machine. `default`
 * means the default one, which is made where there is none. Refuses: `machine-is-invented` where the example's is to be the
 * default.
 */
export const describeMachine = (
  ports: Ports,
  id: string,
  asked: MachineDescribed,
): Promise<Outcome<WorkshopMachine>> =>
  ports.store.change(async (session) => {
    const known =
      id === defaultMachineId ? await defaultMachine(session, ports) : await session.machine(id);
    const before = known ?? (await addMachine(session, ports, { ...asked, id }));
    if (asked.isDefault === true && before.isExample) return refused('machine-is-invented');
    const isDefault = before.isDefault || asked.isDefault === true;
    if (isDefault && !before.isDefault) await noneIsDefault(session);
    const machine = { ...before, isDefault, machine: asked.machine ?? before.machine };
    await session.replaceMachine(machine);
    return done(machine);
  });

const noneIsDefault = async (session: Session): Promise<void> => {
  for (const each of await ownMachines(session))
    if (each.isDefault) await session.replaceMachine({ ...each, isDefault: false });
};
