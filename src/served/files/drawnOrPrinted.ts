import { andThen, done, type Outcome } from '../../core/problem.ts';
import { fileForMachine } from '../../formats/fileForMachine.ts';
import type { FileToMake } from '../../formats/fileToMake.ts';
import { machineFiles, type RampFileKind } from '../../formats/machineFiles.ts';
import type { CardFile } from './cardFile.ts';

/**
 * A drawing for the machine, or its page for paper. What the check of files faults is made in no kind: no page either is given
 * away of a drawing that may not be.
 */
export const drawnOrPrinted = async (
  kind: RampFileKind,
  make: FileToMake,
  print: () => Promise<Outcome<Uint8Array>>,
): Promise<Outcome<CardFile>> => {
  const drawn = await fileForMachine(kind === 'pdf' ? 'svg' : kind, make);
  if (!drawn.ok) return drawn;
  if (kind !== 'pdf')
    return done({ contentType: machineFiles[kind].contentType, body: drawn.value });
  return andThen(await print(), (body) => done({ contentType: 'application/pdf', body }));
};
