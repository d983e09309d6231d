import { machineTests, type MachineTestName } from '../machineTests.ts';
import { text } from './param.ts';

/** What can stand against reading, keeping or removing a test of a machine: the same of every kind. */
export type MachineTestCode = `${MachineTestName}-${'not-found' | 'id-taken'}`;

/** Something for each of these codes. */
export const byTestCode = <Missing, Taken = Missing>(
  missing: (name: MachineTestName) => Missing,
  taken: (name: MachineTestName) => Taken,
) =>
  Object.fromEntries(
    machineTests.flatMap((name): [string, Missing | Taken][] => [
      [`${name}-not-found`, missing(name)],
      [`${name}-id-taken`, taken(name)],
    ]),
  ) as {
    readonly [Code in MachineTestCode]: Code extends `${string}-not-found` ? Missing : Taken;
  };

const named = () => ({ id: text }) as const;

export const machineTestProblems = byTestCode(named, named);
