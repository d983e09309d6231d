import { machineName } from '../../core/machine/gatherMachines.ts';
import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { defaultMachineId } from '../../core/machine/workshopMachine.ts';
import { omit } from '../../core/omit.ts';
import { done, type Outcome } from '../../core/problem.ts';
import { defaultMachine, findMachine, ownMachines } from './machineOf.ts';
import type { Ports, Session } from '../ports/ports.ts';

interface OfMachine {
  readonly machineId?: string;
  readonly machine?: string;
}

/**
 * A metering or test with the machine that it is of: by its id, by its name, else the default. What is tested of the example's
 * invented machine belongs to the example, and goes with it. Refuses: `machine-not-found`.
 */
export const ofItsMachine = async <T extends OfMachine>(
  session: Session,
  making: Pick<Ports, 'clock' | 'ids'>,
  asked: T,
): Promise<Outcome<T & { readonly machineId: string; readonly isExample?: true }>> => {
  const { machine, machineId } = asked;
  const named =
    machine === undefined
      ? undefined
      : (await ownMachines(session)).find(
          (each) => machineName(each.machine) === machineName({ name: machine }),
        );
  const found: Outcome<WorkshopMachine> =
    machineId === undefined || machineId === defaultMachineId
      ? done(named ?? (await defaultMachine(session, making)))
      : await findMachine(session, machineId);
  if (!found.ok) return found;
  const { id, isExample, machine: known } = found.value;
  return done({
    ...omit(asked, 'machine'),
    machineId: id,
    ...(known.name === undefined ? {} : { machine: known.name }),
    ...(isExample ? { isExample } : {}),
  } as T & { readonly machineId: string; readonly isExample?: true });
};
