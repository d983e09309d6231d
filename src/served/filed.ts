import { done, type Outcome } from '../core/problem.ts';
import type { UnitPreference } from '../core/units/unitPreference.ts';
import type { RampFileKind } from '../formats/machineFiles.ts';
import { FileAnswer } from './fileAnswer.ts';
import type { FilesByRequest } from './files/filesByRequest.ts';
import type { Printer } from './files/printer.ts';
import { fileOf } from './files/toFile.ts';

interface FileWanted {
  readonly kind: RampFileKind;
  readonly printer: Printer;
  /** In what units its page and notes speak; absent: mm and mm/s. */
  readonly units?: UnitPreference;
}

/** What was asked for at an address, as one file. */
export const filed = async <Asked>(
  files: FilesByRequest<Asked>,
  asked: Asked,
  { kind, ...options }: FileWanted,
): Promise<Outcome<FileAnswer>> => {
  const made = (await files.load()).make(asked);
  if (!made.ok) return made;
  const file = await fileOf(made.value, kind, options);
  return file.ok
    ? done(new FileAnswer({ ...file.value, name: `${made.value.name}.${kind}` }))
    : file;
};
