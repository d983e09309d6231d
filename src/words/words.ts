import type { ProblemCode, ToldProblem } from '../core/problem.ts';
import { sentences } from './en/areas.ts';
import { wordsIn, type ProblemInWords } from './inWords.ts';
import type { Sentences } from './sentence.ts';

export type Language = 'en';

const spoken = { en: sentences } satisfies Record<Language, Sentences<ProblemCode>>;

/** The codes that have a sentence in this language. */
export const codesWithWords = (language: Language = 'en'): readonly string[] =>
  Object.keys(spoken[language]);

const speakers = { en: wordsIn(spoken.en) } satisfies Record<Language, unknown>;

/** The one place where a problem becomes words. */
export const problemInWords = (problem: ToldProblem, language: Language = 'en'): ProblemInWords =>
  speakers[language](problem);
