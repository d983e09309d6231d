import { plainDialect } from '../core/dialect/gcodeDialect.ts';
import { rampFileKinds } from '../formats/machineFiles.ts';
import { acceptMaterial } from '../core/stock/acceptMaterial.ts';
import { cardCodeFor } from '../core/card/cardCodeFor.ts';
import { cardDrawing } from '../core/card/cardDrawing.ts';
import { designCard } from '../core/card/designCard.ts';
import type { JobSheet } from '../core/card/jobSheet.ts';
import { done, type Outcome, type Problem } from '../core/problem.ts';
import { cardRequestKnowing } from '../core/study/cardRequestKnowing.ts';
import { parseCardRequest } from '../formats/cardRequestFile.ts';
import { gcodeRefusal } from '../formats/gcode/gcodeRefusal.ts';
import { writeFiles, type NamedFile } from '../host/files.ts';
import { problemInWords } from '../words/words.ts';
import { askModel } from './askModel.ts';
import { cardCautions } from '../served/files/cardCautions.ts';
import { printer } from './printer.ts';
import { cardToFile, makeCardFile, type CardToFile } from '../served/files/makeCardFile.ts';
import { readJsonFile } from './readJsonFile.ts';
import { printOutcome, type ExitCode } from './output.ts';

interface CardMade {
  readonly sheet: JobSheet;
  /** What was said when it was designed. */
  readonly remarks: readonly Problem[];
  readonly files: readonly string[];
  readonly notWritten: readonly NotWritten[];
  readonly sheetMm: readonly [widthMm: number, heightMm: number];
}

/**
 * `card --request FILE --out DIR`: designs a card and writes `card.json`, `.svg`, `.dxf`, `.gcode` and `.pdf` into the
 * folder, which is made where it is missing. What G-code cannot carry is not written as G-code, and the output says why;
 * otherwise nothing is written unless all of it can be.
 */
export const runCard = async (options: {
  readonly request: string;
  readonly out: string;
}): Promise<ExitCode> => printOutcome(await makeCard(options.request, options.out), shown);

const makeCard = async (requestFile: string, folder: string): Promise<Outcome<CardMade>> => {
  const request = await readJsonFile(requestFile, parseCardRequest);
  if (!request.ok) return request;
  const accepted = acceptMaterial(request.value.study.stock);
  if (!accepted.ok) return accepted;

  const { study } = request.value;
  const known = await askModel('answerToDesignBy', { cut: study, earlier: [] });
  if (!known.ok) return known;
  const code = request.value.wish.code ?? cardCodeFor(JSON.stringify(request.value));
  const wish = cardRequestKnowing(study, { ...request.value.wish, code }, known.value);
  const designed = designCard(wish);
  if (!designed.ok) return designed;
  const { card, remarks } = designed.value;
  const dialect = request.value.gcode;
  const given = await cardToFile({ ask: askModel }, { card, cut: study, dialect });
  if (!given.ok) return given;
  const files = await cardFiles(given.value);
  if (!files.ok) return files;
  const { sheet } = given.value;
  const { write, notWritten } = files.value;
  const written = await writeFiles(folder, write, { gone: notWritten.map(({ name }) => name) });
  return written.ok
    ? done({ sheet, remarks, files: written.value, notWritten, sheetMm: wish.sheetMm })
    : written;
};

/** A file that the card does not have, and why. */
interface NotWritten {
  readonly name: string;
  readonly why: Problem;
}

interface CardFiles {
  readonly write: readonly NamedFile[];
  readonly notWritten: readonly NotWritten[];
}

const kinds = ['json', ...rampFileKinds] as const;

const cardFiles = async (given: CardToFile): Promise<Outcome<CardFiles>> => {
  const { dialect = given.machine.gcode ?? plainDialect } = given;
  const noGcode = gcodeRefusal(cardDrawing(given.card), dialect);
  const write: NamedFile[] = [];
  for (const kind of kinds) {
    if (kind === 'gcode' && noGcode !== undefined) continue;
    const file = await makeCardFile(given, kind, printer);
    if (!file.ok) return file;
    write.push({ name: `card.${kind}`, content: file.value.body });
  }
  const notWritten = noGcode === undefined ? [] : [{ name: 'card.gcode', why: noGcode }];
  return done({ write, notWritten });
};

const shown = ({
  sheet,
  remarks,
  files,
  notWritten,
  sheetMm: [sheetWidth, sheetHeight],
}: CardMade): object => {
  const { card, time } = sheet;
  const used = (card.widthMm * card.heightMm) / (sheetWidth * sheetHeight);
  return {
    version: 1,
    code: card.code,
    rungs: card.rungs.map(({ letter, setting }) => ({ letter, ...setting })),
    cells: card.cells.length,
    settings: card.rungs.length,
    widthMm: card.widthMm,
    heightMm: card.heightMm,
    sheetUsedPct: Number((100 * used).toFixed(1)),
    time: {
      seconds: Math.round(time.seconds),
      lowSeconds: Math.round(time.lowSeconds),
      highSeconds: Math.round(time.highSeconds),
    },
    files,
    ...(notWritten.length === 0
      ? {}
      : { notWritten: notWritten.map(({ name, why }) => ({ name, ...problemInWords(why) })) }),
    remarks: [...remarks, ...unsaid(sheet.remarks, remarks)].map((remark) =>
      problemInWords(remark),
    ),
    cautions: cardCautions(sheet),
  };
};

const unsaid = (remarks: readonly Problem[], said: readonly Problem[]): readonly Problem[] =>
  remarks.filter(({ code }) => !said.some((one) => one.code === code));
