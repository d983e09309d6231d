import { designKerfCard } from '../app/card/designKerfCard.ts';
import type { KerfCard } from '../core/kerf/kerfCard.ts';
import { done, type Outcome } from '../core/problem.ts';
import { glowsOn } from '../core/stock/glowsOn.ts';
import { parseJsonText } from '../formats/border.ts';
import { parseKerfCardRequest } from '../formats/kerfCardRequestFile.ts';
import { rampFileKinds } from '../formats/machineFiles.ts';
import { readTextFile, writeFiles, type NamedFile } from '../host/files.ts';
import { kerfSheetText } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import { kerfCardCautions } from '../served/files/makeKerfCardFile.ts';
import { kerfCardFile } from './kerfCardFile.ts';
import { printOutcome, type ExitCode } from './output.ts';

interface KerfCardMade {
  readonly card: KerfCard;
  readonly glows: boolean;
  readonly files: readonly string[];
}

/** `kerf --request FILE --out DIR`: a comb or slot card as SVG, DXF, G-code and PDF; all of them or none. */
export const runKerfCard = async (options: {
  readonly request: string;
  readonly out: string;
}): Promise<ExitCode> =>
  printOutcome(await make(options.request, options.out), ({ card, glows, files }) => ({
    version: 1,
    card: card.sheet.kind,
    pieceMm: [card.sheet.widthMm, card.sheet.heightMm],
    ...(card.sheet.kind === 'comb'
      ? {
          combs: card.sheet.combs.map(({ label, direction, strips, nominalMm }) => ({
            place: label,
            direction,
            strips,
            nominalMm,
          })),
        }
      : { slots: card.sheet.slots.map(({ drawnMm }) => drawnMm) }),
    setting: card.setting,
    scoring: card.scoring,
    files,
    steps: kerfSheetText.steps(card),
    remarks: card.remarks.map((remark) => problemInWords(remark)),
    cautions: kerfCardCautions(card, glows),
  }));

const make = async (requestFile: string, folder: string): Promise<Outcome<KerfCardMade>> => {
  const text = await readTextFile(requestFile);
  if (!text.ok) return text;
  const json = parseJsonText(text.value);
  if (!json.ok) return json;
  const request = parseKerfCardRequest(json.value);
  if (!request.ok) return request;
  const { asked, gcode } = request.value;
  const card = designKerfCard(asked);
  if (!card.ok) return card;
  const glows = glowsOn(asked.named.material);
  const files: NamedFile[] = [];
  for (const kind of rampFileKinds) {
    const toFile = { card: card.value, machine: asked.machine, dialect: gcode, glows };
    const file = await kerfCardFile(toFile, kind);
    if (!file.ok) return file;
    const name = `${kerfSheetText.file[card.value.sheet.kind]}.${kind}`;
    files.push({ name, content: file.value.body });
  }
  const written = await writeFiles(folder, files);
  return written.ok ? done({ card: card.value, glows, files: written.value }) : written;
};
