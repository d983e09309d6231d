import type { MachineTestName } from '../../core/machineTests.ts';
import { done, type Outcome } from '../../core/problem.ts';
import type { Ports } from '../ports/ports.ts';
import { findMachineTest } from '../shared/findMachineTest.ts';

/** Removes a test. Refuses: `…-not-found`. */
export const removeMachineTest = (
  { store }: Pick<Ports, 'store'>,
  name: MachineTestName,
  id: string,
): Promise<Outcome<undefined>> =>
  store.change(async (session) => {
    const found = await findMachineTest(session, name, id);
    if (!found.ok) return found;
    await session.deleteMachineTest(name, id);
    return done(undefined);
  });
