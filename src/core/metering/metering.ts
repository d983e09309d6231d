import type { TubePoint } from '../machine/machine.ts';

/** One sitting at the milliammeter: what the tube drew at some power settings, on one day. */
export interface Metering {
  readonly version: 1;
  readonly id: string;
  /** ISO 8601, UTC. */
  readonly at: string;
  /** Of the invented example workshop: goes with it, and is never exported. */
  readonly isExample?: true;
  /** Absent: from before machines were things of their own. */
  readonly machineId?: string;
  /** The machine's name; absent where it has none. Meterings of different machines are never compared. */
  readonly machine?: string;
  /** What the tube was rated for that day: a new tube may be rated otherwise. */
  readonly ratedCurrentMa?: number;
  /** In the order in which they were read; several at one setting are repeats. */
  readonly readings: readonly TubePoint[];
  /** Temperature of the cooling water, °C. */
  readonly waterC?: number;
  readonly note?: string;
}

/** What was read, before anybody keeps it. */
export type UnkeptMetering = Omit<Metering, 'version' | 'id' | 'at' | 'isExample'>;
