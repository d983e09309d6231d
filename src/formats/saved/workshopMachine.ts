import { z } from 'zod';
import { machineChangeKinds, type MachineChange } from '../../core/machine/machineChange.ts';
import type { WorkshopMachine } from '../../core/machine/workshopMachine.ts';
import { id, isoTime, note } from './bounds.ts';
import { machineShape } from './machine.ts';

/** Something changed on a machine, as saved and sent. */
export const machineChangeShape = z.strictObject({
  id,
  at: isoTime,
  what: z.enum(machineChangeKinds),
  note: note.exactOptional(),
}) satisfies z.ZodType<MachineChange>;

export const machineChangesShape = z.array(machineChangeShape).max(1000);

/** A machine of a workshop as saved and sent. */
export const workshopMachineShape = z.strictObject({
  version: z.literal(1),
  id,
  isExample: z.boolean(),
  isDefault: z.boolean(),
  addedAt: isoTime,
  machine: machineShape,
  changes: machineChangesShape,
}) satisfies z.ZodType<WorkshopMachine>;
