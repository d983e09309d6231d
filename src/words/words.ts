import type { Problem } from '../core/problem.ts';
import { areas } from './en/areas.ts';
import { fillFrom, type AreaWords } from './sentence.ts';

/** A problem as a person reads it. `code` stays, for programs and for looking it up. */
export interface ProblemInWords {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

export type Language = 'en';

const sentences: Readonly<Record<Language, AreaWords>> = {
  en: Object.fromEntries(areas.flatMap((area) => Object.entries(area))),
};

/** The codes that have a sentence in this language. */
export const codesWithWords = (language: Language = 'en'): readonly string[] =>
  Object.keys(sentences[language]);

/**
 * The one place where a problem becomes words. A code without a sentence (which a test keeps from happening to listed
 * codes) is shown as what it is, with all that is known of it.
 */
export const problemInWords = (problem: Problem, language: Language = 'en'): ProblemInWords => {
  const { code, params } = problem;
  const known = sentences[language];
  const sentence = Object.hasOwn(known, code) ? known[code] : undefined;
  if (sentence === undefined) return unworded(problem);
  const p = fillFrom(params);
  return { code, message: sentence.message(p), remedy: sentence.remedy(p) };
};

const unworded = ({ code, params }: Problem): ProblemInWords => {
  const p = fillFrom(params);
  const known = Object.keys(params).map((name) => `${name}: ${p(name)}`);
  const details = known.length > 0 ? ` (${known.join(', ')})` : '';
  return {
    code,
    message: `Something went wrong that has no words yet: ${code}${details}.`,
    remedy: 'Nothing was changed. Please report this code with what you were doing.',
  };
};
