import { basename, dirname } from 'node:path';
import type { Explanation } from '../core/explain/explanation.ts';
import { done, type Outcome } from '../core/problem.ts';
import { explanationFile } from '../formats/explanationFile.ts';
import { parseCutStudy, type StudyFile } from '../formats/studyFile.ts';
import { writeFiles } from '../host/files.ts';
import { whySentences } from '../words/texts.ts';
import { problemInWords } from '../words/words.ts';
import { askModel } from './askModel.ts';
import { printOutcome, type ExitCode } from './output.ts';
import { readJsonFile, readJsonPiped } from './readJsonFile.ts';
import { reasoningPage } from '../served/files/reasoningPage.ts';
import { printer } from './printer.ts';

/** `calc explain`: a study file on standard input; what carries its answer, what would change it, on standard output. */
export const runCalcExplain = async (): Promise<ExitCode> =>
  printOutcome(await explained(await readJsonPiped(parseCutStudy)), ({ study, explanation }) =>
    shown(study, explanation),
  );

/** `explain --study FILE --out FILE.pdf`: the same as one printable page. */
export const runExplain = async (options: {
  readonly study: string;
  readonly out: string;
}): Promise<ExitCode> =>
  printOutcome(await explainedTo(options.study, options.out), ({ study, explanation, file }) => ({
    ...shown(study, explanation),
    file,
  }));

interface Explained {
  readonly study: StudyFile;
  readonly explanation: Explanation;
  readonly file: string;
}

const explainedTo = async (studyFile: string, out: string): Promise<Outcome<Explained>> => {
  const why = await explained(await readJsonFile(studyFile, parseCutStudy));
  if (!why.ok) return why;
  const { study, explanation } = why.value;
  const page = await reasoningPage(study, explanation, { printer });
  if (!page.ok) return page;
  const content = page.value;
  const written = await writeFiles(dirname(out), [{ name: basename(out), content }]);
  if (!written.ok) return written;
  return done({ study, explanation, file: written.value[0] ?? out });
};

const explained = async (study: Outcome<StudyFile>): Promise<Outcome<Omit<Explained, 'file'>>> => {
  if (!study.ok) return study;
  const why = await askModel('explainCutStudy', study.value);
  return why.ok ? done({ study: study.value, explanation: why.value }) : why;
};

const shown = (study: StudyFile, explanation: Explanation): object => ({
  ...explanationFile(explanation, problemInWords),
  sentences: whySentences(explanation, study.cells),
});
