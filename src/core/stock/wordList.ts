/** A word or phrase to look for, and the same as bare letters run together, worked out once. */
export interface Term {
  readonly term: string;
  readonly joined: string;
  /** How much of a text's word it must be: the whole, its start, its end, or any part. */
  readonly fits: 'whole' | 'start' | 'end' | 'within';
}

/** Letters that do not come apart into a plain one and an accent. */
const plainLetters: ReadonlyMap<string, string> = new Map([
  ['ß', 'ss'],
  ['ł', 'l'],
  ['ı', 'i'],
  ['ø', 'o'],
  ['đ', 'd'],
  ['æ', 'ae'],
  ['œ', 'oe'],
]);

/** A run of letters of one script: what stands beside it without a space is another word (`PVC板`, `ABS樹脂`). */
const wordPattern =
  /\p{Script=Latin}+|\p{Script=Cyrillic}+|[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}ー]+|[^\P{L}\p{Script=Latin}\p{Script=Cyrillic}\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}ー]+|\d+(?:[.,]\d+)?/gu;
const withoutSpaces = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}ー]/u;

/** Letters of other scripts that look like Latin ones, in small print. */
const lookAlikes: ReadonlyMap<string, string> = new Map(
  Object.entries({
    ...{ а: 'a', в: 'b', е: 'e', к: 'k', м: 'm', н: 'h', о: 'o', р: 'p', с: 'c', т: 't', у: 'y' },
    ...{ х: 'x', ѕ: 's', і: 'i', ј: 'j' },
    ...{
      α: 'a',
      β: 'b',
      ε: 'e',
      ι: 'i',
      κ: 'k',
      μ: 'm',
      ν: 'v',
      ο: 'o',
      ρ: 'p',
      τ: 't',
      υ: 'y',
      χ: 'x',
    },
  }),
);

/** A word of two scripts (“РVС”, two letters of it Cyrillic) is meant to be read in one: look-alikes become Latin. */
const inOneScript = (word: string): string =>
  /\p{Script=Latin}/u.test(word)
    ? word.replace(/[\p{Script=Cyrillic}\p{Script=Greek}]/gu, (one) => lookAlikes.get(one) ?? one)
    : word;

/** A text as bare words: case, accents, dots in abbreviations (`P.V.C.`), dashes gone; figures apart from letters. */
export const bareWords = (text: string): readonly string[] =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/\p{L}+/gu, inOneScript)
    .replace(/[ßłıøđæœ]/g, (letter) => plainLetters.get(letter) ?? letter)
    .replace(/(?<!\p{L})(?:\p{L}\.){2,}\p{L}?/gu, (dotted) => dotted.replaceAll('.', ''))
    .replace(/(\d)(mm|cm)(?=\p{L})/gu, '$1 $2 ')
    .match(wordPattern) ?? [];

/**
 * Terms listed as people list things: `oak, lime wood, olive wood`, over as many lines as it takes. A star stands for
 * whatever may follow or come before: `sperrholz*` is also found in “Sperrholzplatte”, `*glas` in “Fensterglas”. Terms of
 * scripts without spaces are found anywhere.
 */
export const wordList = (listed: string): readonly Term[] =>
  listed.split(',').map((written) => {
    const term = written.trim().replace(/\s+/g, ' ');
    const joined = bareWords(term).join('');
    return { term: term.replaceAll('*', ''), joined, fits: fitOf(term, joined) };
  });

const fitOf = (term: string, joined: string): Term['fits'] => {
  if (withoutSpaces.test(joined)) return 'within';
  if (term.startsWith('*')) return term.endsWith('*') ? 'within' : 'end';
  return term.endsWith('*') ? 'start' : 'whole';
};

/** None where nothing is listed. */
export const wordListOf = (listed: string | undefined): readonly Term[] =>
  listed === undefined ? [] : wordList(listed);

/**
 * Terms of two words the other way round, as price lists have them (“leather, imitation”) and as languages that put the
 * adjective where they please do.
 */
export const otherWayRound = (terms: readonly Term[]): readonly Term[] =>
  terms.flatMap((one) => {
    const [first, second, ...more] = bareWords(one.term);
    return one.fits !== 'whole' || first === undefined || second === undefined || more.length > 0
      ? []
      : [{ ...one, joined: `${second}${first}` }];
  });
