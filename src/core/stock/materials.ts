import { materialClassIds, type MaterialClassId } from './materialClass.ts';
import { dictionaryOf, mentionsIn } from './mentions.ts';
import type { MaterialNames } from './names/materialNames.ts';
import { otherLanguages } from './names/otherLanguages.ts';
import { bareWords, wordList, wordListOf, type Term } from './wordList.ts';

/** A class of sheet material that is cut, with the name that screens show. */
export interface MaterialClass {
  /** Also the class by which the cut model looks up its prior. */
  readonly id: MaterialClassId;
  readonly name: string;
}

interface ListedClass extends MaterialClass {
  /** What people call it in English. */
  readonly words: readonly Term[];
}

const listed: readonly ListedClass[] = [
  { id: 'plywood', name: 'Plywood', words: wordList(`plywood, ply, plywoods, multiplex`) },
  {
    id: 'mdf',
    name: 'MDF',
    words: wordList(`
      mdf, hdf, medium density fibreboard, medium density fiberboard, fibreboard,
      fiberboard
    `),
  },
  { id: 'hardboard', name: 'Hardboard', words: wordList(`hardboard`) },
  { id: 'veneer', name: 'Veneer', words: wordList(`veneer`) },
  {
    id: 'acrylic',
    name: 'Acrylic',
    words: wordList(`acrylic, pmma, perspex, plexiglas, plexi, acryl`),
  },
  {
    id: 'cardboard',
    name: 'Corrugated cardboard',
    words: wordList(`cardboard, corrugated, corrugated card, carton, carton board`),
  },
  {
    id: 'card',
    name: 'Card',
    words: wordList(`card, cardstock, card stock, greyboard, grayboard, mount board, mat board`),
  },
  { id: 'paper', name: 'Paper', words: wordList(`paper`) },
  {
    id: 'leather',
    name: 'Vegetable-tanned leather',
    words: wordList(`veg tan, veg tanned, vegetable tanned, vegetable tan, vegtan, leather`),
  },
  { id: 'cork', name: 'Cork', words: wordList(`cork`) },
  { id: 'felt', name: 'Wool felt', words: wordList(`felt, wool felt, wool`) },
  {
    id: 'fabric',
    name: 'Cotton or linen',
    words: wordList(`cotton, linen, canvas, denim, calico, hemp, jute, fabric, cloth`),
  },
  { id: 'bamboo', name: 'Bamboo', words: wordList(`bamboo`) },
  {
    id: 'softwood',
    name: 'Softwood',
    words: wordList(`
      softwood, pine, spruce, fir, cedar, larch, deal, douglas, hemlock, whitewood
    `),
  },
  {
    id: 'hardwood',
    name: 'Hardwood',
    words: wordList(`
      hardwood, wood, solid wood, timber, oak, walnut, maple, sycamore, cherry, beech, birch, ash, alder, lime, lime
      wood, limewood, linden, basswood, balsa, poplar, aspen, chestnut, elm, pear, apple
      wood, plum wood, mahogany, sapele, teak, rosewood, ipe, wenge, padauk, iroko, ebony,
      purpleheart, hornbeam, willow, paulownia, eucalyptus, olive wood, rubber wood
    `),
  },
  { id: 'rubber', name: 'Laser-safe rubber', words: wordList(`rubber`) },
];

/** The classes to choose from, in the order in which a list shows them. */
export const materialClasses: readonly MaterialClass[] = listed.map(({ id, name }) => ({
  id,
  name,
}));

/** The class that a person's text names: "birch ply 3 mm" is plywood. Nothing when it names none that is listed. */
export const findMaterial = (text: string): MaterialClass | undefined => {
  const { id } = classMentions(text);
  return materialClasses.find((one) => one.id === id);
};

/** Classes that are judged as well: their words stand with the judgement. */
const judgedAs: Readonly<Partial<Record<MaterialClassId, keyof MaterialNames>>> = {
  plywood: 'glued-plywood',
  mdf: 'mdf-board',
  acrylic: 'acrylic-sheet',
  cardboard: 'corrugated-board',
  leather: 'veg-tan-leather',
  felt: 'wool',
};

const wordsFor = (id: MaterialClassId, language: MaterialNames): readonly Term[] => {
  const judged = judgedAs[id];
  return [
    ...wordListOf(language[id]),
    ...(judged === undefined ? [] : wordListOf(language[judged])),
  ];
};

const byClass = dictionaryOf(
  listed.map(({ id, words }): readonly [MaterialClassId, readonly Term[]] => [
    id,
    [...words, ...otherLanguages.flatMap((language) => wordsFor(id, language))],
  ]),
);

/** What a text names, the class that stands first among the classes. */
const classMentions = (text: string) => {
  const named = mentionsIn(text, byClass).filter(({ isDenied }) => !isDenied);
  const id = materialClassIds.find((each) => named.some(({ of }) => of === each));
  return { id, mentions: named.filter(({ of }) => of === id) };
};

/** Words that say nothing of the material: units, and what any sheet is called. */
const saysNothing: ReadonlySet<string> = new Set(
  'mm cm in inch inches thick thickness sheet sheets board boards panel panels of the a and'.split(
    ' ',
  ),
);

/** What a text says beside its class, figures left out: of "3 mm birch ply" it is `birch`. */
export const besidesMaterial = (text: string): ReadonlySet<string> => {
  const { mentions } = classMentions(text);
  const said = bareWords(text).filter(
    (word, at) =>
      !mentions.some(({ fromWord, toWord }) => fromWord <= at && at < toWord) &&
      !saysNothing.has(word) &&
      !/^\d/.test(word),
  );
  return new Set(said);
};
