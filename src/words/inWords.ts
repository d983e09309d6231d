import type { Problem } from '../core/problem.ts';
import { fillFrom, type AreaWords } from './sentence.ts';

/** A problem as a person reads it. `code` stays, for programs and for looking it up. */
export interface ProblemInWords {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

/**
 * Puts problems into the words of these areas. A code without a sentence (which a test keeps from happening to listed
 * codes) is shown as what it is, with all that is known of it.
 */
export const wordsIn = (areas: readonly AreaWords[]): ((problem: Problem) => ProblemInWords) => {
  const known: AreaWords = Object.fromEntries(areas.flatMap((area) => Object.entries(area)));
  return (problem) => {
    const { code, params } = problem;
    const sentence = Object.hasOwn(known, code) ? known[code] : undefined;
    if (sentence === undefined) return unworded(problem);
    const p = fillFrom(params);
    return { code, message: sentence.message(p), remedy: sentence.remedy(p) };
  };
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
