import type { MachineTest, MachineTestName, Unkept } from '../../core/machineTests.ts';
import { done, refused, type Outcome } from '../../core/problem.ts';
import type { MachineTestCode } from '../../core/problems/machineTests.ts';
import { sameValue } from '../../core/sameValue.ts';
import { machineTestKinds, type MachineTestOf } from '../../formats/machineTests.ts';
import type { Ports } from '../ports/ports.ts';
import { ofItsMachine } from '../shared/machineOfTest.ts';
import type { MachineTestRead } from './readMachineTest.ts';

/** A test whose id and time may be left to the tool. */
export type MachineTestToRecord<Name extends MachineTestName> = Unkept<MachineTestOf<Name>> & {
  readonly id?: string;
  readonly at?: string;
};

/**
 * Stores a test with its date. The same one sent twice is stored once. Refuses one that says nothing, on its machine or at all, and `…-id-taken`,
 * `machine-not-found`.
 */
export const recordMachineTest = async <Name extends MachineTestName>(
  ports: Ports,
  name: Name,
  asked: MachineTestToRecord<Name>,
): Promise<Outcome<MachineTestRead<Name>>> => {
  const read = await machineTestKinds[name].reader();
  const taken: MachineTestCode = `${name}-id-taken`;
  return ports.store.change(async (session): Promise<Outcome<MachineTestRead<Name>>> => {
    const own = await ofItsMachine(session, ports, asked as Unkept<MachineTest>);
    if (!own.ok) return own;
    const { ids, clock } = ports;
    const given = { version: 1, id: asked.id ?? ids.newId(), at: asked.at ?? clock.now() };
    // What was asked is the test, but for what is given here.
    const test = { ...own.value, ...given } as unknown as MachineTestOf<Name>;
    const machine = (await session.machine(own.value.machineId))?.machine;
    const says = read(test, machine);
    if (!says.ok) return { ok: false, problem: says.problem };
    const known = await session.machineTest(name, test.id);
    if (known === undefined) {
      await session.insertMachineTest(name, test);
      return done({ test, says });
    }
    const compared = asked.at === undefined ? { ...test, at: known.at } : test;
    return sameValue(known, compared)
      ? done({ test: known, says })
      : refused(taken, { id: test.id });
  });
};
