import { brokenInto } from '../brokenInto.ts';

/** What a comment may hold: plain signs, and no bracket of its own. */
export const comment = (text: string): string =>
  `(${text
    .replaceAll('’', "'")
    .replaceAll('×', 'x')
    .replaceAll(/[\u00a0\u202f]/g, ' ')
    .replaceAll(/[()]/g, ' ')
    .replaceAll(/[^ -~]/g, '?')})`;

/** Some controllers read no more than 80 signs of a line. */
const mostSigns = 76;

/** A longer text as comments, broken between words. */
export const comments = (text: string): readonly string[] =>
  brokenInto(text, mostSigns).map(comment);
