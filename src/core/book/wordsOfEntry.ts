import { foundBy } from '../search/sought.ts';
import type { ProvenSetting } from './provenSetting.ts';

/** By which words a kept setting is found, beside its machine's name. */
export const wordsOfEntry = ({ code, holdsFor, note, personsChoice }: ProvenSetting): string =>
  foundBy([code, holdsFor.material, holdsFor.batch, holdsFor.sheet, note, personsChoice]);
