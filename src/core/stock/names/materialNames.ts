import type { OpenQuestion } from '../../problems/stock.ts';
import type { MaterialClassId } from '../materialClass.ts';
import type { JudgedMaterialName } from '../../judgedMaterials.ts';

/** What a language's word may name. `innocent`: it sounds like a refused thing and is none. */
export type Named = JudgedMaterialName | MaterialClassId | OpenQuestion | 'innocent';

/** The words of one language, listed as `wordList` reads them, by what they name. Names that all languages share stand in English. */
export type MaterialNames = Readonly<Partial<Record<Named, string>>>;
