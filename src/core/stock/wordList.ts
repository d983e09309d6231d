/** A word or phrase to look for, and the same as bare letters run together, worked out once. */
export interface Term {
  readonly term: string;
  readonly joined: string;
}

/** A text as bare words: case, accents, dots in abbreviations (`P.V.C.`), dashes gone; figures apart from letters. */
export const bareWords = (text: string): readonly string[] =>
  text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/\b(?:\p{L}\.){2,}\p{L}?/gu, (dotted) => dotted.replaceAll('.', ''))
    .match(/\p{L}+|\d+(?:[.,]\d+)?/gu) ?? [];

/** Terms listed as people list things: `oak, lime wood, olive wood`, over as many lines as it takes. */
export const wordList = (listed: string): readonly Term[] =>
  listed.split(',').map((written) => {
    const term = written.trim().replace(/\s+/g, ' ');
    return { term, joined: bareWords(term).join('') };
  });
