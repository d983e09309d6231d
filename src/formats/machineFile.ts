import { z } from 'zod';
import type { Machine } from '../core/machine/machine.ts';
import type { Outcome } from '../core/problem.ts';
import { parseWith } from './border.ts';
import { studyFileShape } from './studyFile.ts';

/** A machine in a file of its own, with what its G-code means. */
export interface MachineFile {
  readonly version?: 1;
  readonly machine: Machine;
  /** The S word that means a power setting of 100 %. */
  readonly sAtFullPower?: number;
}

/** The keys of a study's `machine`, and `sAtFullPower`, which outranks that of its `gcode`; `version` may stand there. */
const shape = studyFileShape.shape.machine
  .unwrap()
  .extend({
    version: z.literal(1).exactOptional(),
    sAtFullPower: z.number().positive().max(1_000_000).exactOptional(),
  })
  .transform(({ version, sAtFullPower, ...machine }): MachineFile => ({
    ...(version === undefined ? {} : { version }),
    machine,
    ...scaleOf(sAtFullPower ?? machine.gcode?.sAtFullPower),
  }));

const scaleOf = (sAtFullPower: number | undefined): Pick<MachineFile, 'sAtFullPower'> =>
  sAtFullPower === undefined ? {} : { sAtFullPower };

/** Reads a machine file, strict about keys, types and ranges. */
export const parseMachineFile = (json: unknown): Outcome<MachineFile> => parseWith(shape, json);
