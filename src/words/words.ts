import { areas } from './en/areas.ts';
import { wordsIn } from './inWords.ts';

export type Language = 'en';

/** The codes that have a sentence in this language. */
export const codesWithWords = (language: Language = 'en'): readonly string[] =>
  ({ en: areas })[language].flatMap((area) => Object.keys(area));

const speakers = { en: wordsIn(areas) } satisfies Record<Language, unknown>;

/** The one place where a problem becomes words. */
export const problemInWords = (
  problem: Parameters<(typeof speakers)['en']>[0],
  language: Language = 'en',
) => speakers[language](problem);
