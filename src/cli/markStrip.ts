import { designMarkStrip } from '../app/card/designMarkStrip.ts';
import { rungLetter } from '../core/card/rungLetter.ts';
import type { MarkStrip } from '../core/marking/markStrip.ts';
import { done, type Outcome } from '../core/problem.ts';
import { parseJsonText } from '../formats/border.ts';
import { rampFileKinds } from '../formats/machineFiles.ts';
import { parseMarkStripRequest } from '../formats/markStripRequestFile.ts';
import { readTextFile, writeFiles, type NamedFile } from '../host/files.ts';
import { markStripText } from '../words/texts.ts';
import { markStripCautions } from '../served/files/makeMarkStripFile.ts';
import { markStripFile } from './markStripFile.ts';
import { printOutcome, type ExitCode } from './output.ts';

interface StripMade {
  readonly strip: MarkStrip;
  readonly files: readonly string[];
}

/** `mark --request FILE --out DIR`: a marking strip as SVG, DXF, G-code and PDF; all of them or none. */
export const runMarkStrip = async (options: {
  readonly request: string;
  readonly out: string;
}): Promise<ExitCode> =>
  printOutcome(await make(options.request, options.out), ({ strip, files }) => ({
    version: 1,
    strip: strip.kind,
    pieceMm: [strip.widthMm, strip.heightMm],
    lineSpacingMm: strip.lineSpacingMm,
    steps: strip.settings.map((setting, i) => ({ step: rungLetter(i), ...setting })),
    scoring: strip.scoring,
    files,
    how: markStripText.steps(strip),
    cautions: markStripCautions(strip),
  }));

const make = async (requestFile: string, folder: string): Promise<Outcome<StripMade>> => {
  const text = await readTextFile(requestFile);
  if (!text.ok) return text;
  const json = parseJsonText(text.value);
  if (!json.ok) return json;
  const request = parseMarkStripRequest(json.value);
  if (!request.ok) return request;
  const { asked, gcode } = request.value;
  const made = designMarkStrip(asked);
  if (!made.ok) return made;
  const files: NamedFile[] = [];
  for (const kind of rampFileKinds) {
    const file = await markStripFile({ ...made.value, dialect: gcode }, kind);
    if (!file.ok) return file;
    files.push({ name: `marking-strip.${kind}`, content: file.value.body });
  }
  const written = await writeFiles(folder, files);
  return written.ok ? done({ strip: made.value.strip, files: written.value }) : written;
};
