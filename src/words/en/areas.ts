import type { AreaWords } from '../sentence.ts';
import { firstAreas } from './firstAreas.ts';
import { laterAreas } from './laterAreas.ts';

/** Every area's sentences in English. A new area is one file and one line in either list. No code may stand in two areas. */
export const areas: readonly AreaWords[] = [...firstAreas, ...laterAreas];
