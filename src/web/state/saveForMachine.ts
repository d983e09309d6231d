import type { Problem } from '../../core/problem.ts';
import {
  fileForMachine,
  type FileToMake,
  type MachineFileKind,
} from '../../formats/fileForMachine.ts';
import { saveText } from './saveText.ts';

const contentTypes: Readonly<Record<MachineFileKind, string>> = {
  svg: 'image/svg+xml',
  dxf: 'image/vnd.dxf',
  gcode: 'text/plain',
};

/** Makes a file for the machine on this page and saves it; what the check of files faults is not saved, and is returned. */
export const saveForMachine = async (
  name: string,
  kind: MachineFileKind,
  make: FileToMake,
): Promise<Problem | undefined> => {
  const file = await fileForMachine(kind, make);
  if (!file.ok) return file.problem;
  saveText(`${name}.${kind}`, contentTypes[kind], file.value);
  return undefined;
};
