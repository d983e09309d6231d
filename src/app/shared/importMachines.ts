import { sameMachine } from '../../core/machine/sameMachine.ts';
import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import type { ExportFile } from '../../formats/exportFile.ts';
import { ownMachines } from './machineOf.ts';
import type { Session } from '../ports/ports.ts';

/** Which machine here is meant by the id of one in a file. */
export type MachineHere = (idInFile: string) => string | undefined;

/**
 * Adds the machines of a file that are not here yet. One that is here under its id, or else under its name, stays as it is here;
 * only what was changed on it comes along. Where the workshop has none, the file's default is the default.
 */
export const importMachines = async (
  session: Session,
  { machines }: Pick<ExportFile, 'machines'>,
  note: (isNew: boolean) => void,
): Promise<MachineHere> => {
  const hereFor = new Map<string, string>();
  for (const machine of machines) {
    const own = await ownMachines(session);
    const here = own.find(({ id }) => id === machine.id) ?? soleOfName(machine, own, machines);
    if (here === undefined) {
      const isDefault = machine.isDefault && !own.some((each) => each.isDefault);
      await session.insertMachine({ ...machine, isExample: false, isDefault });
    } else {
      const known = new Set(here.changes.map(({ id }) => id));
      const changes = [...here.changes, ...machine.changes.filter(({ id }) => !known.has(id))];
      await session.replaceMachine({ ...here, changes });
    }
    hereFor.set(machine.id, here?.id ?? machine.id);
    note(here === undefined);
  }
  return (id) => hereFor.get(id);
};

const soleOfName = (
  machine: WorkshopMachine,
  own: readonly WorkshopMachine[],
  file: readonly WorkshopMachine[],
): WorkshopMachine | undefined => {
  const all = [...own, ...file].map((each) => each.machine);
  const alike = own.filter((each) => sameMachine(each.machine, machine.machine, all));
  return alike.length === 1 ? alike[0] : undefined;
};
