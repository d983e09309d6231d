import { rampFileKinds } from '../formats/machineFiles.ts';
import { designRamp } from '../app/card/designRamp.ts';
import type { RampCard } from '../core/card/rampCard.ts';
import { done, type Outcome } from '../core/problem.ts';
import { parseJsonText } from '../formats/border.ts';
import { parseRampRequest } from '../formats/rampRequestFile.ts';
import { readTextFile, writeFiles, type NamedFile } from '../host/files.ts';
import { rampSheetText } from '../words/texts.ts';
import { printOutcome, type ExitCode } from './output.ts';
import { rampCautions } from '../served/files/makeRampFile.ts';
import { rampFile } from './rampFile.ts';

interface RampMade {
  readonly card: RampCard;
  readonly files: readonly string[];
}

/** `ramp --request FILE --out DIR`: a focus ramp as `focus-ramp.svg`, `.dxf`, `.gcode` and `.pdf`; all of them or none. */
export const runRamp = async (options: {
  readonly request: string;
  readonly out: string;
}): Promise<ExitCode> =>
  printOutcome(await makeRamp(options.request, options.out), ({ card, files }) => ({
    version: 1,
    ramp: card.ramp,
    lines: card.lines.map(({ letter, setting, dose }) => ({ letter, ...setting, dose })),
    files,
    steps: rampSheetText.steps(card.ramp),
    cautions: rampCautions(card),
  }));

const makeRamp = async (requestFile: string, folder: string): Promise<Outcome<RampMade>> => {
  const text = await readTextFile(requestFile);
  if (!text.ok) return text;
  const json = parseJsonText(text.value);
  if (!json.ok) return json;
  const asked = parseRampRequest(json.value);
  if (!asked.ok) return asked;
  const card = designRamp(asked.value.strip, asked.value.request);
  if (!card.ok) return card;
  const files: NamedFile[] = [];
  for (const kind of rampFileKinds) {
    const { machine } = asked.value.request;
    const file = await rampFile({ card: card.value, machine, dialect: asked.value.gcode }, kind);
    if (!file.ok) return file;
    files.push({ name: `${rampSheetText.file}.${kind}`, content: file.value.body });
  }
  const written = await writeFiles(folder, files);
  return written.ok ? done({ card: card.value, files: written.value }) : written;
};
