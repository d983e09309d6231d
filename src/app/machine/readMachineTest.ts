import type { MachineTestName } from '../../core/machineTests.ts';
import { done, type Outcome } from '../../core/problem.ts';
import {
  machineTestKinds,
  type MachineTestOf,
  type TestSaidOf,
} from '../../formats/machineTests.ts';
import type { Ports } from '../ports/ports.ts';
import { findMachineTest } from '../shared/findMachineTest.ts';

/** A stored test, with what it says, or why it says nothing. */
export interface MachineTestRead<Name extends MachineTestName> {
  readonly test: MachineTestOf<Name>;
  readonly says: TestSaidOf<Name>;
}

/** One test and what it says. Refuses: `…-not-found`. */
export const readMachineTest = async <Name extends MachineTestName>(
  { store }: Pick<Ports, 'store'>,
  name: Name,
  id: string,
): Promise<Outcome<MachineTestRead<Name>>> => {
  const read = await machineTestKinds[name].reader();
  const found = await store.read((session) => findMachineTest(session, name, id));
  return found.ok ? done({ test: found.value, says: read(found.value) }) : found;
};
