import { z } from 'zod';
import { id, isoTime } from '../formats/saved/bounds.ts';
import { machineShape } from '../formats/saved/machine.ts';
import { machineChangeShape } from '../formats/saved/workshopMachine.ts';

/** `default`: the one that sheets are begun on. */
export const byMachine = z.strictObject({ id });
export const byMachineChange = z.strictObject({ id, changeId: id });

/** What is said of a machine; what is absent stays as it is. */
export const describeMachineBody = z.strictObject({
  addedAt: isoTime.exactOptional(),
  machine: machineShape.exactOptional(),
  isDefault: z.literal(true).exactOptional(),
});

export const noteMachineChangeBody = machineChangeShape.extend({
  id: id.exactOptional(),
  at: isoTime.exactOptional(),
});
