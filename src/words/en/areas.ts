import type { AreaWords } from '../sentence.ts';
import { appWords } from './app.ts';
import { formatWords } from './formats.ts';
import { readingWords } from './reading.ts';
import { storeWords } from './store.ts';

/** Every area's sentences in English. A new area is one file and one line here. No code may stand in two areas. */
export const areas: readonly AreaWords[] = [appWords, formatWords, readingWords, storeWords];
