import type { RawProblem } from '../core/problem.ts';
import { wordsIn, type ProblemInWords } from './inWords.ts';
import { sentences } from './sentences.ts';

/** The codes that have a sentence. */
export const codesWithWords = (): readonly string[] => Object.keys(sentences);

/** The one place where a problem becomes words. */
export const problemInWords: (problem: RawProblem) => ProblemInWords = wordsIn(sentences);
