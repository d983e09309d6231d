import {
  isCautionedMaterial,
  isRefusedMaterial,
  judgedMaterialNames,
  type CautionedMaterial,
  type JudgedMaterialName,
  type RefusedMaterial,
} from '../judgedMaterials.ts';
import { problemOf, type Problem, type ProblemOf } from '../problem.ts';
import { remembered } from '../remembered.ts';
import type { OpenQuestion } from '../problems/stock.ts';
import { findMaterial, type MaterialClass } from './materials.ts';
import { innocentWords, materialWords, standsBackForPlywood } from './materialWords.ts';
import { dictionaryOf, mentionsIn, overlap, type Mention } from './mentions.ts';
import { otherLanguages } from './names/otherLanguages.ts';
import { openQuestions } from './openQuestions.ts';
import { bareWords, otherWayRound, wordList, wordListOf, type Term } from './wordList.ts';

/**
 * What is thought of a material by its name. `allowed` never means safe: it means that the name gives no reason to
 * refuse. `unknown` is a question to put to the user. `material` is the class of stock, where the text names one.
 */
export type MaterialJudgement = {
  readonly material?: MaterialClass;
  /** All that is to be said of it wherever it is cut: the refusal or the open question first, then every caution. */
  readonly remarks: readonly Problem[];
} & (
  | { readonly decision: 'allowed' }
  | {
      readonly decision: 'caution';
      /** What of the list the text names. */
      readonly judged: CautionedMaterial;
      readonly problem: ProblemOf<'material-caution'>;
    }
  | {
      readonly decision: 'refuse';
      readonly judged: RefusedMaterial;
      readonly problem: ProblemOf<'material-refused'>;
    }
  | { readonly decision: 'unknown'; readonly problem: ProblemOf<Question> }
);

/** A question, of a name or where nothing known is named. */
type Question =
  OpenQuestion | 'material-rubber-data-sheet' | 'material-what-instead' | 'material-unknown';

/**
 * Judges a material by the text that a person typed ("3 mm birch ply", "P.V.C.", "poly carbonate", "leather"). Of
 * several things named the strictest counts; of overlapping names the longer. Text that names nothing known, or a thing
 * that comes in a refusable kind (leather, cloth, plastic), is a question, not a yes.
 */
export const judgeMaterial = (text: string): MaterialJudgement => judged(text);

/** So many names are remembered: more materials than that has no workshop. */
const mostRemembered = 500;

const judged = remembered((text: string): MaterialJudgement => {
  const { names, questions, denied } = readNames(text);
  const material = findMaterial(text);
  const about = material === undefined ? {} : { material };
  const cautioned = [...new Set(names.filter(isCautionedMaterial))];
  const cautions = cautioned.map((one) => problemOf('material-caution', { judged: one }));
  const refusals = names.filter(isRefusedMaterial);
  const refusal = refusals.find((one) => !isLaserRubber(text, one) && !denied.has(one));
  if (refusal !== undefined) {
    const problem = problemOf('material-refused', { text, judged: refusal });
    return { decision: 'refuse', judged: refusal, problem, remarks: [problem], ...about };
  }
  const asked = leftOpen(text, refusals) ?? questions[0] ?? unlisted(cautions, material);
  if (asked !== undefined) {
    const problem = problemOf(asked, { text });
    return { decision: 'unknown', problem, remarks: [problem, ...cautions], ...about };
  }
  const [caution] = cautioned;
  const [problem] = cautions;
  return caution === undefined || problem === undefined
    ? { decision: 'allowed', remarks: [], ...about }
    : { decision: 'caution', judged: caution, problem, remarks: cautions, ...about };
}, mostRemembered);

/** The question that stands in for a refusal: of rubber for lasers, or of what the text says that it is not. */
const leftOpen = (text: string, [refusal]: readonly RefusedMaterial[]): Question | undefined => {
  if (refusal === undefined) return undefined;
  return isLaserRubber(text, refusal) ? 'material-rubber-data-sheet' : 'material-what-instead';
};

const unlisted = (
  cautions: readonly Problem[],
  material: MaterialClass | undefined,
): Question | undefined =>
  cautions.length === 0 && material === undefined ? 'material-unknown' : undefined;

interface NamesRead {
  /** Each by its longest word, those hidden in longer or innocent words left out. */
  readonly names: readonly JudgedMaterialName[];
  /** Open and not settled by what else is named, the most pressing first. */
  readonly questions: readonly OpenQuestion[];
  /** What the text says that it is not: another word for the same (“non-PVC vinyl”) is then asked about. */
  readonly denied: ReadonlySet<JudgedMaterialName>;
}

type Named = JudgedMaterialName | OpenQuestion | 'innocent';

const others = (of: Named): readonly Term[] =>
  otherLanguages.flatMap(({ [of]: listed }) => wordListOf(listed));

/** Everything that decides, in all languages. */
const dictionary = dictionaryOf<Named>([
  ...judgedMaterialNames.map((name): readonly [Named, readonly Term[]] => {
    const terms = [...materialWords[name], ...others(name)];
    return [name, isRefusedMaterial(name) ? [...terms, ...otherWayRound(terms)] : terms];
  }),
  ...openQuestions.map(({ code, words }): readonly [Named, readonly Term[]] => [
    code,
    [...words, ...others(code)],
  ]),
  ['innocent', [...innocentWords, ...others('innocent')]],
]);
const settling = dictionaryOf(openQuestions.map((one) => [one.code, one.settledByWords] as const));

const readNames = (text: string): NamesRead => {
  const all = mentionsIn(text, dictionary).toSorted((a, b) => letters(b) - letters(a));
  const innocent = all.filter(({ of }) => of === 'innocent');
  const kept: Mention<Named>[] = [];
  for (const one of all) {
    if (innocent.some((word) => overlap(word, one))) continue;
    if (!kept.some((longer) => hides(longer, one))) kept.push(one);
  }
  const said = kept.filter(({ isDenied }) => !isDenied);
  const isPlywood = said.some(({ of }) => of === 'glued-plywood');
  const names = said
    .filter((one) => !isPieces(text, one))
    .flatMap(({ of }) => judgedMaterialNames.filter((name) => name === of))
    .filter((name) => !(isPlywood && standsBackForPlywood.has(name)));
  const settled = new Set(mentionsIn(text, settling).map(({ of }) => of));
  const isOpen = ({ code, settledBy }: (typeof openQuestions)[number]): boolean =>
    said.some(({ of }) => of === code) &&
    !settled.has(code) &&
    !settledBy.some((name) => said.some(({ of }) => of === name));
  return {
    names,
    questions: openQuestions.filter(isOpen).map(({ code }) => code),
    denied: new Set(judgedMaterialNames.filter((name) => isSaidNotToBe(kept, name))),
  };
};

/** Of “PVC, not PVC” nothing is denied: the same word both ways. */
const isSaidNotToBe = (kept: readonly Mention<Named>[], name: JudgedMaterialName): boolean => {
  const own = kept.filter(({ of }) => of === name);
  const said = new Set(own.filter(({ isDenied }) => !isDenied).map(({ term }) => term));
  return own.some(({ isDenied, term }) => isDenied && !said.has(term));
};

/** A longer word hides what it overlaps; a slip hides nothing that is spelled right ("vegan leather", "veg tan leather"). */
const hides = (longer: Mention<Named>, other: Mention<Named>): boolean =>
  overlap(longer, other) &&
  letters(longer) > letters(other) &&
  (longer.exact || !other.exact) &&
  longer.isDenied === other.isDenied;

const letters = ({ term }: Mention<Named>): number => term.length;

/** "5 pc birch ply" is five pieces: after a bare figure, and only where the text names another material. */
const isPieces = (text: string, { term, fromWord }: Mention<Named>): boolean =>
  term === 'pc' &&
  /^\d+$/.test(bareWords(text)[fromWord - 1] ?? '') &&
  findMaterial(text) !== undefined;

const laserRubber = dictionaryOf([
  [
    'laser rubber',
    wordList(
      'laser rubber, laser safe rubber, laserable rubber, laser stamp rubber, laser grade rubber',
    ),
  ],
]);

const isLaserRubber = (text: string, name: JudgedMaterialName): boolean =>
  name === 'unknown-rubber' && mentionsIn(text, laserRubber).some(({ isDenied }) => !isDenied);
