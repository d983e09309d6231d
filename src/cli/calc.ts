import { answerCutStudy } from '../app/answerCutStudy.ts';
import { nextCardFor } from '../app/proposeNextCard.ts';
import type { Outcome } from '../core/problem.ts';
import { fitAnswerFile, nextCardFile } from '../formats/answerFile.ts';
import { parseJsonText } from '../formats/border.ts';
import { parseCutStudy, type StudyFile } from '../formats/studyFile.ts';
import { readStdin } from '../host/files.ts';
import { problemInWords } from '../words/words.ts';
import { printOutcome, type ExitCode } from './output.ts';

/** `calc fit`: a study file on standard input, its answer on standard output. */
export const runFit = async (): Promise<ExitCode> =>
  printOutcome(await studyPipedIn(), (study) =>
    fitAnswerFile(answerCutStudy(study), problemInWords),
  );

/** `calc nextcard`: the same study with `cellsWanted` and `settingsAtMost`, and the card that would teach most. */
export const runNextCard = async (): Promise<ExitCode> =>
  printOutcome(await studyPipedIn(), (study) =>
    nextCardFile(nextCardFor(study, study), problemInWords),
  );

const studyPipedIn = async (): Promise<Outcome<StudyFile>> => {
  const piped = await readStdin();
  if (!piped.ok) return piped;
  const json = parseJsonText(piped.value);
  return json.ok ? parseCutStudy(json.value) : json;
};
