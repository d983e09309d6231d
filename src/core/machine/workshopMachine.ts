import type { Machine } from './machine.ts';
import type { MachineChange } from './machineChange.ts';

/**
 * A machine of the workshop. What is known of it stands here and nowhere else: sheets, meterings and tests name it by its
 * id, so that a limit entered today counts for every sheet of it.
 */
export interface WorkshopMachine {
  readonly version: 1;
  readonly id: string;
  /** Of the invented example workshop: goes with it, is never exported, and no sheet of anybody's is cut on it. */
  readonly isExample: boolean;
  /** Sheets are begun on it where nobody says otherwise: one of the workshop's own. */
  readonly isDefault: boolean;
  /** ISO 8601, UTC. */
  readonly addedAt: string;
  readonly machine: Machine;
  /** What was changed on it, in no order. */
  readonly changes: readonly MachineChange[];
}

/** Stands for the default machine where the one who asks does not know which that is, or whether there is one yet. */
export const defaultMachineId = 'default';
