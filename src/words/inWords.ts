import type { RawProblem } from '../core/problem.ts';
import { shown, type SomeSentences } from './shape/sentence.ts';

/** A problem as a person reads it. `code` stays, for programs and for looking it up. */
export interface ProblemInWords {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

/** A sentence whose code is known only when it is said. */
interface AnySentence {
  message(p: Readonly<Record<string, string | undefined>>): string;
  remedy(p: Readonly<Record<string, string | undefined>>): string;
}

/**
 * Puts problems into these words. A code without a sentence (the compiler keeps that from happening to listed codes;
 * another version may tell one) is shown as what it is, with all that is known of it.
 */
export const wordsIn = (known: SomeSentences): ((problem: RawProblem) => ProblemInWords) => {
  const sentences: Readonly<Record<string, AnySentence>> = known;
  return (problem) => {
    const { code, params } = problem;
    const sentence = Object.hasOwn(sentences, code) ? sentences[code] : undefined;
    if (sentence === undefined) return unworded(problem);
    const p = shown(params);
    return { code, message: sentence.message(p), remedy: sentence.remedy(p) };
  };
};

const unworded = ({ code, params }: RawProblem): ProblemInWords => {
  const known = Object.entries(shown(params)).map(([name, value]) => `${name}: ${value}`);
  const details = known.length > 0 ? ` (${known.join(', ')})` : '';
  return {
    code,
    message: `Something went wrong that has no words yet: ${code}${details}.`,
    remedy: 'Nothing was changed. Please report this code with what you were doing.',
  };
};
