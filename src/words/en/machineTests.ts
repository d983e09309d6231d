import type { MachineTestName } from '../../core/machineTests.ts';
import { byTestCode, type MachineTestCode } from '../../core/problems/machineTests.ts';
import type { Sentence } from '../shape/sentence.ts';

/** What a test of each kind is called, and in short. */
const called: Readonly<Record<MachineTestName, readonly [whole: string, short: string]>> = {
  metering: ['metering', 'metering'],
  'focus-test': ['focus test', 'focus test'],
  'kerf-test': ['measured kerf', 'measurement'],
  'mark-test': ['mark', 'mark'],
  'bed-test': ['reading of the four corners', 'reading'],
};

/** What stands against reading, keeping or removing a test of a machine. */
export const machineTestWords: { readonly [Code in MachineTestCode]: Sentence<Code> } = byTestCode(
  (name) => ({
    message: (p: { readonly id: string }) => `There is no ${called[name][0]} “${p.id}”.`,
    remedy: () => 'It may have been removed. Load the page again.',
  }),
  (name) => ({
    message: (p: { readonly id: string }) =>
      `Another ${called[name][0]} already has the id “${p.id}”.`,
    remedy: () => `Send the ${called[name][1]} with an id of its own, or with none.`,
  }),
);
