import type { OpenQuestion } from '../problems/stock.ts';
import type { JudgedMaterialName } from '../judgedMaterials.ts';
import { wordList, type Term } from './wordList.ts';

interface AskedAbout {
  readonly code: OpenQuestion;
  /** English words that leave the question open; those of other languages stand in `names/`. */
  readonly words: readonly Term[];
  /** What settles it where the text names it as well. */
  readonly settledBy: readonly JudgedMaterialName[];
  /** Words that settle it. */
  readonly settledByWords: readonly Term[];
}

/**
 * Names that leave open whether the thing may be cut, the most pressing first. Decisions: judgement from the reasons of
 * `../judgedMaterials.ts`, no source of their own. "Acrylic felt" and "synthetic felt" are no acrylic sheet and no wool:
 * acrylic fibre is polyacrylonitrile and gives off hydrogen cyanide (from memory). Polyester and polyethylene are cut in
 * industry and prohibited by some workshops: a person looks first.
 */
export const openQuestions: readonly AskedAbout[] = [
  {
    code: 'material-which-leather',
    words: wordList('leather, suede, hide'),
    settledBy: ['veg-tan-leather'],
    settledByWords: [],
  },
  {
    code: 'material-which-felt',
    words: wordList(`
      synthetic felt, acrylic felt, polyester felt, craft felt, artificial felt, vegan felt, acrylic fibre,
      acrylic fiber, acrylic yarn, acrylic wool, acrylic fabric, acrylic cloth
    `),
    settledBy: [],
    settledByWords: [],
  },
  {
    code: 'material-which-cloth',
    words: wordList('fabric, cloth, textile'),
    settledBy: [],
    settledByWords: wordList(`
      cotton, linen, denim, calico, hemp, jute, wool, silk, felt, polyester, fleece, coton, lin,
      algodon, lino, algodao, linho, cotone, katoen, linnen, baumwoll*, leinen*, bawelnian*,
      lnian*, хлопков*, льнян*, pamuk*, keten
    `),
  },
  {
    code: 'material-which-plastic',
    words: wordList(`
      plastic, plastics, plastic sheet, polymer, thermoplastic, pet, petg, pe, ldpe,
      polyethylene, polythene, mylar, film, plastic film, stone paper, mineral paper
    `),
    settledBy: ['acrylic-sheet', 'mirrored-acrylic'],
    settledByWords: [],
  },
  {
    code: 'material-which-layers',
    words: wordList(`
      laminated, laminate, laminated paper, laminated card, plastic coated, film coated,
      foil backed, plasticised, plasticized
    `),
    settledBy: ['melamine-faced'],
    settledByWords: wordList(
      'laminated bamboo, laminated veneer, laminated wood, laminated timber, laminated beech',
    ),
  },
];
