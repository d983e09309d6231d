import { editDistance } from '../../num/editDistance.ts';
import { bareWords, type Term } from './wordList.ts';

/** Where a text names something: words `from` to `to` of the text (the end not included), and the term that it hit. */
export interface Mention {
  readonly from: number;
  readonly to: number;
  readonly term: string;
  /** Not by a slip of a letter. */
  readonly exact: boolean;
}

const longestWindow = 5;
/** Shorter words have too many innocent neighbours to be taken for one another by a slip of a letter. */
const leastLettersForSlip = 8;

/**
 * Every place where a text names one of the terms, whole words only. Words may be run together or apart
 * ("poly carbonate"), plural, or have one slip of a letter where the term is long. "PVC-free", "non-vinyl" and
 * "not vinyl" name nothing.
 */
export const mentionsOf = (text: string, terms: readonly Term[]): readonly Mention[] => {
  const words = bareWords(text);
  const found: Mention[] = [];
  for (let from = 0; from < words.length; from += 1) {
    for (let to = from + 1; to <= Math.min(words.length, from + longestWindow); to += 1) {
      const joined = words.slice(from, to).join('');
      const hit =
        terms.find((term) => isPlainlySame(joined, term.joined)) ??
        terms.find((term) => isNearlySame(joined, term.joined, to - from));
      if (hit !== undefined && !isDenied(words, from, to))
        found.push({ from, to, term: hit.term, exact: isPlainlySame(joined, hit.joined) });
    }
  }
  return found;
};

export const overlap = (a: Mention, b: Mention): boolean => a.from < b.to && b.from < a.to;

const isNearlySame = (typed: string, term: string, words: number): boolean => {
  if (Math.min(typed.length, term.length) < leastLettersForSlip) return false;
  if (words === 1 && typed.includes(term)) return true; // "polycarbonatesheet"
  // The first letter is seldom the slip, and keeps hardboard from being a slip of cardboard.
  if (typed[0] !== term[0] || Math.abs(typed.length - term.length) > 1) return false;
  return editDistance(typed, term) <= 1;
};

const isPlainlySame = (typed: string, term: string): boolean =>
  typed === term || (term.length >= 4 && typed === `${term}s`);

const denials: ReadonlySet<string> = new Set(['no', 'non', 'not', 'without', 'zero']);

const isDenied = (words: readonly string[], from: number, to: number): boolean =>
  words[to] === 'free' || denials.has(words[from - 1] ?? '');
