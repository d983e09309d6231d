/** Begins and ends what the made-up language says; neither stands anywhere else, and the typeface of pages has both. */
export const opening = '‹';
export const closing = '›';

/** So much longer is what it says, as many a language is. */
const longer = 1 / 3;

/** A long word stays one word, a sentence gets more of them. */
const stretch = (text: string): string => {
  const wanted = Math.ceil(text.length * longer);
  const word = text.includes(' ') ? ' mmmm' : 'mmmm';
  return word
    .repeat(Math.ceil(wanted / word.length))
    .slice(0, wanted)
    .trimEnd();
};

const sentence = (text: string): string =>
  /\p{L}/u.test(text) ? `${opening}${text}${stretch(text)}${closing}` : text;

/** Of a caution its code is no word of a language. */
const notSaid = new Set(['code']);

/**
 * Everything that these words say, wrapped and a third longer.
 *
 * @public Asked for by the module that `pseudoLanguage.ts` writes.
 */
export const inPseudo = <Words>(words: Words): Words => changed(words) as Words;

const changed = (words: unknown): unknown => {
  if (typeof words === 'string') return sentence(words);
  if (typeof words === 'function')
    return (...given: unknown[]): unknown => changed(Reflect.apply(words, undefined, given));
  if (Array.isArray(words)) return words.map(changed);
  if (typeof words !== 'object' || words === null) return words;
  const same = {};
  for (const name of Object.keys(words))
    Object.defineProperty(same, name, {
      enumerable: true,
      // Read when it is asked for: some words are in the units that are chosen later.
      get: () => {
        const value: unknown = Reflect.get(words, name);
        return notSaid.has(name) ? value : changed(value);
      },
    });
  return same;
};
