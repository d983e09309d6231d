import type { Machine } from '../../../core/machine/machine.ts';

/** What a part of the meter's screen is given of the machine. */
export interface OfMachineProps {
  readonly machineId: string;
  readonly machine: Machine;
  readonly onChange: (machine: Machine) => void;
}
