import type { Problem } from '../problem.ts';
import type { StockCode } from './codes.ts';
import { findMaterial, type MaterialClass } from './materials.ts';
import {
  judgedMaterials,
  type JudgedMaterial,
  type JudgedMaterialName,
} from './materialsToRefuse.ts';
import { innocentWords, materialWords, standsBackForPlywood } from './materialWords.ts';
import { mentionsOf, overlap, type Mention } from './mentions.ts';
import { bareWords, wordList } from './wordList.ts';

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
      readonly decision: 'caution' | 'refuse';
      readonly entry: JudgedMaterial;
      /** The word in the list that the text hit. */
      readonly matched: string;
      readonly problem: Problem;
    }
  | { readonly decision: 'unknown'; readonly problem: Problem }
);

/**
 * Judges a material by the text that a person typed ("3 mm birch ply", "P.V.C.", "poly carbonate", "leather"). Of
 * several things named the strictest counts; of overlapping names the longer. Text that names nothing known, or a thing
 * that comes in a refusable kind (leather, cloth), is a question, not a yes.
 */
export const judgeMaterial = (text: string): MaterialJudgement => {
  const named = namedEntries(text);
  const material = findMaterial(text);
  const about = material === undefined ? {} : { material };
  const cautioned = named.filter(({ entry }) => entry.decision === 'caution');
  const cautions = cautioned.map((one) => problemOf('material-caution', text, one));
  const refusal = named.find(({ entry }) => entry.decision === 'refuse');
  if (refusal !== undefined && !isLaserRubber(text, refusal)) {
    const problem = problemOf('material-refused', text, refusal);
    return { decision: 'refuse', ...refusal, problem, remarks: [problem], ...about };
  }
  const asked =
    openQuestion(text, named) ??
    (cautioned.length === 0 && material === undefined ? 'material-unknown' : undefined);
  if (asked !== undefined) {
    const problem: Problem = { code: asked, params: { text } };
    return { decision: 'unknown', problem, remarks: [problem, ...cautions], ...about };
  }
  const [caution] = cautioned;
  return caution === undefined
    ? { decision: 'allowed', remarks: [], ...about }
    : {
        decision: 'caution',
        ...caution,
        problem: problemOf('material-caution', text, caution),
        remarks: cautions,
        ...about,
      };
};

interface Named {
  readonly entry: JudgedMaterial & { readonly material: JudgedMaterialName };
  readonly matched: string;
}

/** The entries that the text names, each by its longest word, those hidden in longer or innocent words left out. */
const namedEntries = (text: string): readonly Named[] => {
  const innocent = mentionsOf(text, innocentWords);
  const all = judgedMaterials
    .flatMap((entry) =>
      mentionsOf(text, materialWords[entry.material]).map((at) => ({ entry, at })),
    )
    .filter(({ at }) => !innocent.some((word) => overlap(word, at)))
    .sort((a, b) => letters(b.at) - letters(a.at));
  const kept: typeof all = [];
  for (const one of all) {
    const hidden = kept.some(({ at }) => hides(at, one.at));
    if (!hidden) kept.push(one);
  }
  const plywood = kept.some(({ entry }) => entry.material === 'Plywood');
  return kept
    .filter(({ entry }) => !(plywood && standsBackForPlywood.has(entry.material)))
    .filter(({ at }) => !isPieces(text, at))
    .map(({ entry, at }) => ({ entry, matched: at.term }));
};

/** A longer word hides what it overlaps; a slip hides nothing that is spelled right ("vegan leather", "veg tan leather"). */
const hides = (longer: Mention, other: Mention): boolean =>
  overlap(longer, other) && letters(longer) > letters(other) && (longer.exact || !other.exact);

const letters = ({ term }: Mention): number => term.length;

/** "5 pc birch ply" is five pieces: after a bare figure, and only where the text names another material. */
const isPieces = (text: string, { term, from }: Mention): boolean =>
  term === 'pc' &&
  /^\d+$/.test(bareWords(text)[from - 1] ?? '') &&
  findMaterial(text) !== undefined;

const laserRubber = wordList(
  'laser rubber, laser safe rubber, laserable rubber, laser stamp rubber, laser grade rubber',
);

const isLaserRubber = (text: string, { entry }: Named): boolean =>
  entry.material === 'Rubber and elastomers of unknown type' &&
  mentionsOf(text, laserRubber).length > 0;

/** Names that leave open whether the thing may be cut. */
const openQuestion = (text: string, named: readonly Named[]): StockCode | undefined => {
  const tanned = named.some(({ entry }) => entry.material === 'Vegetable-tanned leather');
  if (mentionsOf(text, anyLeather).length > 0 && !tanned) return 'material-which-leather';
  const cloth = mentionsOf(text, anyCloth).length > 0;
  if (cloth && mentionsOf(text, knownCloth).length === 0) return 'material-which-cloth';
  const forLasers = named.some((one) => isLaserRubber(text, one));
  return forLasers ? 'material-rubber-data-sheet' : undefined;
};

const anyLeather = wordList('leather, suede');
const anyCloth = wordList('fabric, cloth, textile');
const knownCloth = wordList(
  'cotton, linen, denim, calico, hemp, jute, wool, silk, felt, polyester, fleece',
);

const problemOf = (code: StockCode, text: string, { entry }: Named): Problem => ({
  code,
  params: {
    text,
    material: entry.material,
    reason: entry.reason,
    hazards: entry.hazards.join(', '),
    source: entry.sources.join('; '),
  },
});
