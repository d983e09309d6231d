import type { MachineTestName } from '../../core/machineTests.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { MachineTestCode } from '../../core/problems/machineTests.ts';
import type { MachineTestOf } from '../../formats/machineTests.ts';
import type { ReadSession } from '../ports/ports.ts';

/** One test of a machine inside a session. Refuses: `…-not-found`. */
export const findMachineTest = async <Name extends MachineTestName>(
  session: ReadSession,
  name: Name,
  id: string,
): Promise<Outcome<MachineTestOf<Name>>> => {
  const missing: MachineTestCode = `${name}-not-found`;
  const test = await session.machineTest(name, id);
  return test === undefined ? refused(missing, { id }) : done(test);
};
