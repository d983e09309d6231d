import type { Problem } from '../../core/problem.ts';
import { fileForMachine } from '../../formats/fileForMachine.ts';
import type { FileToMake } from '../../formats/fileToMake.ts';
import { machineFiles, type MachineFileKind } from '../../formats/machineFiles.ts';
import { saveText } from './saveText.ts';

/** Makes a file for the machine on this page and saves it; what the check of files faults is not saved, and is returned. */
export const saveForMachine = async (
  name: string,
  kind: MachineFileKind,
  make: FileToMake,
): Promise<Problem | undefined> => {
  const file = await fileForMachine(kind, make);
  if (!file.ok) return file.problem;
  saveText(`${name}.${kind}`, machineFiles[kind].contentType, file.value);
  return undefined;
};
