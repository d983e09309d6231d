import { answerCutStudy } from '../app/answerCutStudy.ts';
import { answerOrder } from '../app/answerOrder.ts';
import { compareTwo } from '../app/compareConditions.ts';
import { planOrder } from '../app/planOrder.ts';
import { nextCardFor } from '../app/proposeNextCard.ts';
import { andThen, type Outcome } from '../core/problem.ts';
import { fitAnswerFile, nextCardFile } from '../formats/answerFile.ts';
import { parseJsonText } from '../formats/border.ts';
import { parseCompareFile } from '../formats/compareFile.ts';
import { comparisonFile } from '../formats/comparisonFile.ts';
import { orderFile } from '../formats/orderFile.ts';
import { planFile } from '../formats/planFile.ts';
import { parseCutStudy, type StudyFile } from '../formats/studyFile.ts';
import { readStdin } from '../host/files.ts';
import { comparisonSaid } from '../words/en/compareVerdict.ts';
import { problemInWords } from '../words/words.ts';
import { printOutcome, printRefusal, type ExitCode } from './output.ts';

/** `calc fit`: a study file on standard input, its answer on standard output. */
export const runFit = async (): Promise<ExitCode> =>
  printOutcome(andThen(await studyPipedIn(), answerCutStudy), (answer) =>
    fitAnswerFile(answer, problemInWords),
  );

/** `calc nextcard`: the same study with `cellsWanted` and `settingsAtMost`, and the card that would teach most. */
export const runNextCard = async (): Promise<ExitCode> =>
  printOutcome(
    andThen(await studyPipedIn(), (study) => nextCardFor(study, study)),
    (next) => nextCardFile(next, problemInWords),
  );

/** `calc order`: the same study with `order`; how many hang, how many to plan, what costs least. */
export const runOrder = async (): Promise<ExitCode> => {
  const study = await studyPipedIn();
  if (!study.ok) return printRefusal(study.problem);
  const { order } = study.value;
  if (order === undefined) return printRefusal({ code: 'order-not-said', params: {} });
  return printOutcome(answerOrder(study.value, order), ({ answer, ofMaterial }) =>
    orderFile(answer, ofMaterial, problemInWords),
  );
};

/** `calc plan`: the same study with `plan`; the next act of an order that is cut sheet by sheet, and why. */
export const runPlan = async (): Promise<ExitCode> => {
  const study = await studyPipedIn();
  if (!study.ok) return printRefusal(study.problem);
  const { plan: wish } = study.value;
  if (wish === undefined) return printRefusal({ code: 'plan-not-said', params: {} });
  return printOutcome(planOrder(study.value, wish), ({ plan, ofMaterial }) =>
    planFile(plan, ofMaterial, problemInWords),
  );
};

/** `calc compare`: a file of two conditions on standard input; how much faster the other cuts, and how surely. */
export const runCompare = async (): Promise<ExitCode> => {
  const json = await jsonPipedIn();
  const file = json.ok ? parseCompareFile(json.value) : json;
  if (!file.ok) return printRefusal(file.problem);
  const { two, names } = file.value;
  return printOutcome(compareTwo(two), (comparison) =>
    comparisonFile(comparison, comparisonSaid(comparison, names), problemInWords),
  );
};

const studyPipedIn = async (): Promise<Outcome<StudyFile>> => {
  const json = await jsonPipedIn();
  return json.ok ? parseCutStudy(json.value) : json;
};

const jsonPipedIn = async (): Promise<Outcome<unknown>> => {
  const piped = await readStdin();
  return piped.ok ? parseJsonText(piped.value) : piped;
};
