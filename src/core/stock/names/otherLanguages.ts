import { chineseNames } from './chinese.ts';
import { dutchNames } from './dutch.ts';
import { frenchNames } from './french.ts';
import { germanNames } from './german.ts';
import { italianNames } from './italian.ts';
import { japaneseNames } from './japanese.ts';
import { polishNames } from './polish.ts';
import { portugueseNames } from './portuguese.ts';
import { russianNames } from './russian.ts';
import { spanishNames } from './spanish.ts';
import { turkishNames } from './turkish.ts';
import type { MaterialNames } from './materialNames.ts';

/** Every language beside English. One more is a file and a line. */
export const otherLanguages: readonly MaterialNames[] = [
  chineseNames,
  dutchNames,
  frenchNames,
  germanNames,
  italianNames,
  japaneseNames,
  polishNames,
  portugueseNames,
  russianNames,
  spanishNames,
  turkishNames,
];
