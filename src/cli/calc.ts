import { beginMarks } from '../app/card/beginMarks.ts';
import { tellEvenShades } from '../app/card/tellEvenShades.ts';
import type { QuestionOf, SumName, SumOutcome } from '../app/sums/model.ts';
import { tellKerf } from '../core/kerf/tellKerf.ts';
import { standingOfCut } from '../core/standing/standingOfCut.ts';
import type { Outcome } from '../core/problem.ts';
import { fitAnswerFile, nextCardFile } from '../formats/answerFile.ts';
import { parseCompareFile } from '../formats/compareFile.ts';
import { comparisonFile } from '../formats/comparisonFile.ts';
import { parseEvenShades } from '../formats/evenShadesFile.ts';
import { kerfResultFile, parseKerfFile } from '../formats/kerfFile.ts';
import { parseMarksFile } from '../formats/marksFile.ts';
import { orderFile } from '../formats/orderFile.ts';
import { planFile } from '../formats/planFile.ts';
import { parseCutStudy, parsePlanStudy, type StudyFile } from '../formats/studyFile.ts';
import { marksSaid, shadesSaid } from '../served/files/marksSaid.ts';
import { comparisonSaid } from '../words/texts.ts';
import { standingInWords } from '../words/standingInWords.ts';
import { problemInWords } from '../words/words.ts';
import { askModel } from './askModel.ts';
import { printOutcome, printRefusal, type ExitCode } from './output.ts';
import { readJsonPiped } from './readJsonFile.ts';

/** `calc fit`: a study file on standard input, its answer on standard output. */
export const runFit = async (): Promise<ExitCode> => {
  const study = await studyPipedIn();
  if (!study.ok) return printRefusal(study.problem);
  const asked = await askModel('answerCutStudy', study.value);
  return printOutcome(asked, (answer) =>
    fitAnswerFile(answer, problemInWords, standingInWords(standingOfCut(study.value, answer))),
  );
};

/** `calc nextcard`: the same study with `cellsWanted` and `settingsAtMost`, and the card that would teach most. */
export const runNextCard = async (): Promise<ExitCode> =>
  printOutcome(
    await answered('nextCard', (study) => ({ study, wish: study, earlier: [] })),
    (next) => nextCardFile(next, problemInWords),
  );

/** `calc order`: the same study with `order`; how many hang, how many to plan, what costs least. */
export const runOrder = async (): Promise<ExitCode> => {
  const study = await studyPipedIn();
  if (!study.ok) return printRefusal(study.problem);
  const { order } = study.value;
  if (order === undefined) return printRefusal({ code: 'order-not-said', params: {} });
  const asked = await askModel('answerOrder', { study: study.value, wish: order });
  return printOutcome(asked, ({ answer, ofMaterial }) =>
    orderFile(answer, ofMaterial, problemInWords),
  );
};

/** `calc plan`: the same study with `plan`; the next act of an order that is cut sheet by sheet, and why. */
export const runPlan = async (): Promise<ExitCode> => {
  const file = await readJsonPiped(parsePlanStudy);
  if (!file.ok) return printRefusal(file.problem);
  const asked = await askModel('planOrder', { ...file.value, earlier: [] });
  return printOutcome(asked, ({ plan, ofMaterial }) => planFile(plan, ofMaterial, problemInWords));
};

/** `calc compare`: a file of two conditions on standard input; how much faster the other cuts, and how surely. */
export const runCompare = async (): Promise<ExitCode> => {
  const file = await readJsonPiped(parseCompareFile);
  if (!file.ok) return printRefusal(file.problem);
  const { two, names } = file.value;
  return printOutcome(await askModel('compareTwo', two), (comparison) =>
    comparisonFile(comparison, comparisonSaid(comparison, names), problemInWords),
  );
};

/** `calc kerf`: combs and slots as they were measured, on standard input; the kerf with its uncertainty, and what to draw. */
export const runKerf = async (): Promise<ExitCode> => {
  const file = await readJsonPiped(parseKerfFile);
  if (!file.ok) return printRefusal(file.problem);
  return printOutcome(tellKerf(file.value), (told) => kerfResultFile(told, problemInWords));
};

/** `calc marks`: a sheet and the cut beside it, on standard input; where to begin with a score and an engraving. */
export const runMarks = async (): Promise<ExitCode> => {
  const file = await readJsonPiped(parseMarksFile);
  if (!file.ok) return printRefusal(file.problem);
  return printOutcome(beginMarks(file.value), marksSaid);
};

/** `calc shades`: a strip of shades as it was read, on standard input; settings for shades that lie evenly apart. */
export const runShades = async (): Promise<ExitCode> => {
  const file = await readJsonPiped(parseEvenShades);
  if (!file.ok) return printRefusal(file.problem);
  const asked = file.value;
  return printOutcome(tellEvenShades(asked), (told) => shadesSaid(told, asked.strip.lineSpacingMm));
};

const answered = async <K extends SumName>(
  name: K,
  questionOf: (study: StudyFile) => QuestionOf<K>,
): Promise<SumOutcome<K> | (Outcome<never> & { readonly ok: false })> => {
  const study = await studyPipedIn();
  return study.ok ? askModel(name, questionOf(study.value)) : study;
};

const studyPipedIn = (): Promise<Outcome<StudyFile>> => readJsonPiped(parseCutStudy);
