import type { MachineTestName } from '../../core/machineTests.ts';
import type { MachineTestOf } from '../../formats/machineTests.ts';
import type { Ports } from '../ports/ports.ts';

/** All tests of one kind, the latest first. */
export const listMachineTests = <Name extends MachineTestName>(
  { store }: Pick<Ports, 'store'>,
  name: Name,
): Promise<readonly MachineTestOf<Name>[]> => store.read((session) => session.machineTests(name));
