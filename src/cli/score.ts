import { countsPromised } from '../app/workshop/scorePromises.ts';
import { scorePromises } from '../core/score/scorePromises.ts';
import { sheetsToScore, type ScoredSheet } from '../core/score/sheetsToScore.ts';
import { done, type Outcome } from '../core/problem.ts';
import { parseJsonText } from '../formats/border.ts';
import { countsFile, parseCountsFile } from '../formats/countsFile.ts';
import { parseExportFile } from '../formats/exportFile.ts';
import { jsonFilesIn, readTextFile, writeTextFile } from '../host/files.ts';
import { scoreSaid } from '../words/texts.ts';
import { printJson, printOutcome, printRefusal, tell, type ExitCode } from './output.ts';
import { withStoreToRead } from './withStore.ts';

/** `score FOLDER`: exports and counts of any number of workshops; what was promised of each sheet held against what came. */
export const runScore = async (folder: string): Promise<ExitCode> => {
  const files = await jsonFilesIn(folder);
  if (!files.ok) return printRefusal(files.problem);
  const all: ScoredSheet[] = [];
  for (const file of files.value) {
    const sheets = await sheetsIn(file);
    if (!sheets.ok) {
      tell(file);
      return printRefusal(sheets.problem);
    }
    // A machine's name is its workshop's own.
    const place =
      files.value.length > 1 ? `${file.replace(/^.*[/\\]/, '').replace(/\.json$/, '')}: ` : '';
    all.push(...sheets.value.map((sheet) => ({ ...sheet, machine: `${place}${sheet.machine}` })));
  }
  const score = scorePromises(all);
  printJson({ version: 1, files: files.value.length, ...score, says: scoreSaid(score) });
  return 0;
};

const sheetsIn = async (file: string): Promise<Outcome<readonly ScoredSheet[]>> => {
  const text = await readTextFile(file);
  if (!text.ok) return text;
  const json = parseJsonText(text.value);
  if (!json.ok) return json;
  const { value } = json;
  if (
    typeof value === 'object' &&
    value !== null &&
    'kind' in value &&
    value.kind === 'throughcut-counts'
  ) {
    const counts = parseCountsFile(value);
    return counts.ok ? done(counts.value.sheets) : counts;
  }
  const whole = parseExportFile(text.value);
  return whole.ok ? done(sheetsToScore(whole.value)) : whole;
};

/** `export --counts`: counts with what was promised of them, without names, notes and dates. */
export const runExportCounts = async (to: string | undefined): Promise<ExitCode> => {
  const sheets = await withStoreToRead(countsPromised);
  const content = `${JSON.stringify(countsFile(sheets), null, 2)}\n`;
  if (to !== undefined)
    return printOutcome(await writeTextFile(to, content), (file) => ({ exported: file }));
  process.stdout.write(content);
  return 0;
};
