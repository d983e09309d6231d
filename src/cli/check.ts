import { checkFile, type FileChecked } from '../app/drawing/checkFile.ts';
import type { Outcome } from '../core/problem.ts';
import { parseCardFile } from '../formats/cardFile.ts';
import { checkReportFile } from '../formats/checkReportFile.ts';
import { problemInWords } from '../words/words.ts';
import { printJson, printRefusal, type ExitCode } from './output.ts';
import { readDrawingText } from './readDrawing.ts';
import { readMachine, readNamed } from './readNamed.ts';

interface CheckOptions {
  readonly card?: string;
  readonly machine?: string;
}

/**
 * `check FILE [--card card.json] [--machine machine.json]`: reads a drawing or program for what would go wrong. Ends
 * with 1 where it finds faults. It never says that a file is safe.
 */
export const runCheck = async (file: string, options: CheckOptions): Promise<ExitCode> => {
  const checked = await check(file, options);
  if (!checked.ok) return printRefusal(checked.problem);
  printJson({ version: 1, file, ...checkReportFile(checked.value, problemInWords) });
  return checked.value.report.ok ? 0 : 1;
};

const check = async (file: string, options: CheckOptions): Promise<Outcome<FileChecked>> => {
  const card = await readNamed(options.card, parseCardFile);
  if (!card.ok) return card;
  const machine = await readMachine(options.machine);
  if (!machine.ok) return machine;
  const text = await readDrawingText(file);
  if (!text.ok) return text;
  return checkFile({
    text: text.value,
    ...(card.value === undefined ? {} : { card: card.value }),
    ...(machine.value === undefined ? {} : { machine: machine.value }),
  });
};
