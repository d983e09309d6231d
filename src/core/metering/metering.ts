import type { MachineTest, Unkept } from '../machineTests.ts';
import type { TubePoint } from '../machine/machine.ts';

/** One sitting at the milliammeter: what the tube drew at some power settings, on one day. */
export interface Metering extends MachineTest {
  /** What the tube was rated for that day: a new tube may be rated otherwise. */
  readonly ratedCurrentMa?: number;
  /** In the order in which they were read; several at one setting are repeats. */
  readonly readings: readonly TubePoint[];
  /** Temperature of the cooling water, °C. */
  readonly waterC?: number;
}

/** What was read, before anybody keeps it. */
export type UnkeptMetering = Unkept<Metering>;
