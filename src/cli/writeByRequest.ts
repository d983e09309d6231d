import { done, type Outcome } from '../core/problem.ts';
import { writeFiles } from '../host/files.ts';
import type { FilesByRequest } from '../served/files/filesByRequest.ts';
import { cautionsOf, filesOf, type ToFile } from '../served/files/toFile.ts';
import { printOutcome, type ExitCode } from './output.ts';
import { printer } from './printer.ts';
import { readJsonFile } from './readJsonFile.ts';

type FromFile = FilesByRequest<never>['fromFile'];

interface RequestOptions {
  readonly request: string;
  readonly out: string;
}

/** `ramp`, `kerf` and `mark` with `--request FILE --out DIR`: what is drawn as SVG, DXF, G-code and PDF; all of them or none. */
export const writeByRequest = async (
  fromFile: FromFile,
  options: RequestOptions,
): Promise<ExitCode> =>
  printOutcome(await written(fromFile, options), ({ made, files }) => ({
    version: 1,
    ...made.told(),
    files,
    cautions: cautionsOf(made.page()),
  }));

interface Written {
  readonly made: ToFile;
  readonly files: readonly string[];
}

const written = async (
  fromFile: FromFile,
  { request, out }: RequestOptions,
): Promise<Outcome<Written>> => {
  const json = await readJsonFile(request, done);
  if (!json.ok) return json;
  const asked = await fromFile(json.value);
  if (!asked.ok) return asked;
  const { made, dialect } = asked.value;
  const files = await filesOf(made, { printer, dialect });
  if (!files.ok) return files;
  const names = await writeFiles(out, files.value);
  return names.ok ? done({ made, files: names.value }) : names;
};
