import { z } from 'zod';
import type { Machine } from '../../core/machine/machine.ts';
import type { MachineTest } from '../../core/machineTests.ts';
import type { Outcome } from '../../core/problem.ts';
import { id, isoTime, label, note } from './bounds.ts';

const common = {
  version: z.literal(1),
  id,
  at: isoTime,
  isExample: z.literal(true).exactOptional(),
  machineId: id.exactOptional(),
  machine: label.exactOptional(),
  note: note.exactOptional(),
};

/** A test of a machine as saved and sent: what every one has, and its own. */
export const testShape = <const Own extends z.core.$ZodLooseShape>(own: Own) =>
  z.strictObject({ ...common, ...own });

/** One kind of test. */
export interface MachineTestKind<
  T extends MachineTest,
  Shape extends z.ZodObject,
  Said extends Outcome<unknown>,
> {
  readonly shape: Shape & z.ZodType<T>;
  /** For whoever reads the API: its list, what one is called, and what one says. */
  readonly about: { readonly list: string; readonly one: string; readonly says: string };
  /** Loads what reads it. What says nothing is not kept, nor what says nothing on its own machine. */
  readonly reader: () => Promise<(test: T, machine?: Machine) => Said>;
}
