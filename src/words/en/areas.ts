import type { AreaWords } from '../sentence.ts';
import { readingWords } from './reading.ts';
import { tubeWords } from './tube.ts';

/** Every area's sentences in English. A new area is one file and one line here. No code may stand in two areas. */
export const areas: readonly AreaWords[] = [readingWords, tubeWords];
