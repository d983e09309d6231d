import { problemOf, type ParamsOf, type Problem, type ProblemOf } from '../problem.ts';
import { remembered } from '../remembered.ts';
import type { OpenQuestion } from '../problems/stock.ts';
import { findMaterial, type MaterialClass } from './materials.ts';
import {
  judgedMaterials,
  type JudgedMaterial,
  type JudgedMaterialName,
} from './materialsToRefuse.ts';
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
  | (Matched & {
      readonly decision: 'caution';
      readonly problem: ProblemOf<'material-caution'>;
    })
  | (Matched & { readonly decision: 'refuse'; readonly problem: ProblemOf<'material-refused'> })
  | { readonly decision: 'unknown'; readonly problem: ProblemOf<Question> }
);

interface Matched {
  readonly entry: JudgedMaterial;
  /** The word in the list that the text hit. */
  readonly matched: string;
}

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
  const { entries, questions, denied } = readNames(text);
  const material = findMaterial(text);
  const about = material === undefined ? {} : { material };
  const cautioned = onceEach(entries.filter(({ entry }) => entry.decision === 'caution'));
  const cautions = cautioned.map((one) => problemOf('material-caution', saidOf(text, one)));
  const refusals = entries.filter(({ entry }) => entry.decision === 'refuse');
  const refusal = refusals.find(
    (one) => !isLaserRubber(text, one) && !denied.has(one.entry.material),
  );
  if (refusal !== undefined) {
    const problem = problemOf('material-refused', saidOf(text, refusal));
    return { decision: 'refuse', ...refusal, problem, remarks: [problem], ...about };
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
    : { decision: 'caution', ...caution, problem, remarks: cautions, ...about };
}, mostRemembered);

/** One material may be named in several words or languages (“plywood, Sperrholz”): what is to be said of it is said once. */
const onceEach = (named: readonly NamedEntry[]): readonly NamedEntry[] =>
  named.filter(
    ({ entry }, i) => named.findIndex((one) => one.entry.material === entry.material) === i,
  );

/** The question that stands in for a refusal: of rubber for lasers, or of what the text says that it is not. */
const leftOpen = (text: string, [refusal]: readonly NamedEntry[]): Question | undefined => {
  if (refusal === undefined) return undefined;
  return isLaserRubber(text, refusal) ? 'material-rubber-data-sheet' : 'material-what-instead';
};

const unlisted = (
  cautions: readonly Problem[],
  material: MaterialClass | undefined,
): Question | undefined =>
  cautions.length === 0 && material === undefined ? 'material-unknown' : undefined;

interface NamedEntry {
  readonly entry: JudgedMaterial & { readonly material: JudgedMaterialName };
  readonly matched: string;
}

interface NamesRead {
  /** Each by its longest word, those hidden in longer or innocent words left out. */
  readonly entries: readonly NamedEntry[];
  /** Open and not settled by what else is named, the most pressing first. */
  readonly questions: readonly OpenQuestion[];
  /** What the text says that it is not: another word for the same (“non-PVC vinyl”) is then asked about. */
  readonly denied: ReadonlySet<JudgedMaterialName>;
}

type Told = JudgedMaterialName | OpenQuestion | 'innocent';

const others = (of: Told): readonly Term[] =>
  otherLanguages.flatMap(({ [of]: listed }) => wordListOf(listed));

/** Everything that decides, in all languages. */
const dictionary = dictionaryOf<Told>([
  ...judgedMaterials.map(({ material, decision }): readonly [Told, readonly Term[]] => {
    const terms = [...materialWords[material], ...others(material)];
    return [material, decision === 'refuse' ? [...terms, ...otherWayRound(terms)] : terms];
  }),
  ...openQuestions.map(({ code, words }): readonly [Told, readonly Term[]] => [
    code,
    [...words, ...others(code)],
  ]),
  ['innocent', [...innocentWords, ...others('innocent')]],
]);
const settling = dictionaryOf(openQuestions.map((one) => [one.code, one.settledByWords] as const));

const readNames = (text: string): NamesRead => {
  const all = mentionsIn(text, dictionary).toSorted((a, b) => letters(b) - letters(a));
  const innocent = all.filter(({ of }) => of === 'innocent');
  const kept: Mention<Told>[] = [];
  for (const one of all) {
    if (innocent.some((word) => overlap(word, one))) continue;
    if (!kept.some((longer) => hides(longer, one))) kept.push(one);
  }
  const said = kept.filter(({ isDenied }) => !isDenied);
  const isPlywood = said.some(({ of }) => of === 'Plywood');
  const entries = said
    .filter((one) => !isPieces(text, one))
    .flatMap(({ of, term }) => {
      const entry = judgedMaterials.find(({ material }) => material === of);
      return entry === undefined ? [] : [{ entry, matched: term }];
    })
    .filter(({ entry }) => !(isPlywood && standsBackForPlywood.has(entry.material)));
  const settled = new Set(mentionsIn(text, settling).map(({ of }) => of));
  const isOpen = ({ code, settledBy }: (typeof openQuestions)[number]): boolean =>
    said.some(({ of }) => of === code) &&
    !settled.has(code) &&
    !settledBy.some((name) => said.some(({ of }) => of === name));
  const denied = judgedMaterials.filter(({ material }) => isSaidNotToBe(kept, material));
  return {
    entries,
    questions: openQuestions.filter(isOpen).map(({ code }) => code),
    denied: new Set(denied.map(({ material }) => material)),
  };
};

/** Of “PVC, not PVC” nothing is denied: the same word both ways. */
const isSaidNotToBe = (kept: readonly Mention<Told>[], name: JudgedMaterialName): boolean => {
  const own = kept.filter(({ of }) => of === name);
  const said = new Set(own.filter(({ isDenied }) => !isDenied).map(({ term }) => term));
  return own.some(({ isDenied, term }) => isDenied && !said.has(term));
};

/** A longer word hides what it overlaps; a slip hides nothing that is spelled right ("vegan leather", "veg tan leather"). */
const hides = (longer: Mention<Told>, other: Mention<Told>): boolean =>
  overlap(longer, other) &&
  letters(longer) > letters(other) &&
  (longer.exact || !other.exact) &&
  longer.isDenied === other.isDenied;

const letters = ({ term }: Mention<Told>): number => term.length;

/** "5 pc birch ply" is five pieces: after a bare figure, and only where the text names another material. */
const isPieces = (text: string, { term, fromWord }: Mention<Told>): boolean =>
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

const isLaserRubber = (text: string, { entry }: NamedEntry): boolean =>
  entry.material === 'Rubber and elastomers of unknown type' &&
  mentionsIn(text, laserRubber).some(({ isDenied }) => !isDenied);

const saidOf = (text: string, { entry }: NamedEntry): ParamsOf<'material-refused'> => ({
  text,
  material: entry.material,
  reason: entry.reason,
  hazards: entry.hazards.join(', '),
  source: entry.sources.join('; '),
});
