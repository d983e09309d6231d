import { checkToolpath } from '../core/filecheck/checkToolpath.ts';
import type { Outcome } from '../core/problem.ts';
import type { FileToMake } from './fileToMake.ts';
import { machineFiles, type MachineFileKind } from './machineFiles.ts';
import { readToolpath } from './readToolpath.ts';

/**
 * The one way from a drawing to a file for the machine: whoever asks, the file is written, read back by the reader of its kind
 * and put through the check of files, and it is given away only without a fault. Refuses with the first fault that the check
 * found, and what the writers refuse. ~0.1 s for a card of 24 cells.
 */
export const fileForMachine = async (
  kind: MachineFileKind,
  make: FileToMake,
): Promise<Outcome<string>> => {
  const written = await machineFiles[kind].write(make);
  if (!written.ok) return written;
  const path = readToolpath(written.value);
  if (!path.ok) return path;
  const { of, machine, believed } = make;
  const { findings } = checkToolpath(path.value, {
    machine,
    ...('drawing' in of ? {} : { card: of }),
    ...(believed === undefined ? {} : { believed }),
  });
  const fault = findings.find(({ severity }) => severity === 'fault');
  return fault === undefined ? written : { ok: false, problem: fault };
};
