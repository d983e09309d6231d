import { done, type Outcome } from '../core/problem.ts';
import { parseJsonText } from '../formats/border.ts';
import { parseMachineFile, type MachineFile } from '../formats/machineFile.ts';
import { readTextFile } from '../host/files.ts';

/** The file that an option names, parsed; undefined where the option was not given. */
export const readNamed = async <T>(
  path: string | undefined,
  parse: (text: string) => Outcome<T>,
): Promise<Outcome<T | undefined>> => {
  if (path === undefined) return done(undefined);
  const text = await readTextFile(path);
  return text.ok ? parse(text.value) : text;
};

/** The machine file that `--machine` names. */
export const readMachine = (path: string | undefined): Promise<Outcome<MachineFile | undefined>> =>
  readNamed(path, (text) => {
    const json = parseJsonText(text);
    return json.ok ? parseMachineFile(json.value) : json;
  });
