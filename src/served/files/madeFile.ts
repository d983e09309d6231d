import { andThen, done, type Outcome } from '../../core/problem.ts';
import { fileForMachine } from '../../formats/fileForMachine.ts';
import type { FileToMake } from '../../formats/fileToMake.ts';
import {
  isMachineFileKind,
  machineFiles,
  type MachineFileKind,
} from '../../formats/machineFiles.ts';

/** A file for the machine, the printer or another program. */
export interface MadeFile {
  readonly contentType: string;
  readonly body: string | Uint8Array;
}

/** What a drawing is given away as besides files for the machine. */
const contentTypes = { pdf: 'application/pdf', json: 'application/json' } as const;

/**
 * A drawing for the machine, or what else is made of it. What the check of files faults is made in no kind: neither page nor
 * master is given away of a drawing that may not be.
 */
export const madeFile = async <Other extends keyof typeof contentTypes>(
  kind: MachineFileKind | Other,
  make: FileToMake,
  others: Readonly<Record<Other, () => Promise<Outcome<MadeFile['body']>>>>,
): Promise<Outcome<MadeFile>> => {
  const drawn = await fileForMachine(isMachineFileKind(kind) ? kind : 'svg', make);
  if (!drawn.ok) return drawn;
  if (isMachineFileKind(kind))
    return done({ contentType: machineFiles[kind].contentType, body: drawn.value });
  return andThen(await others[kind](), (body) => done({ contentType: contentTypes[kind], body }));
};
