import { bareWords } from './wordList.ts';

const listed = (words: string): readonly string[] =>
  words.split(',').map((word) => bareWords(word).join(' '));

/** Words before a name by which a text says that it is not that, in the languages of `names/`. */
export const denialsBefore: ReadonlySet<string> = new Set(
  listed(`
    no, non, not, without, zero, free of, free from, ohne, kein, keine, nicht, sans, pas de, sin, libre de, exento de,
    senza, privo di, priva di, sem, livre de, isento de, zonder, geen, vrij van, bez, nie, wolny od, без, не, 无, 非, 不含,
    無, ノン, 不使用,
    instead of, rather than, in place of, statt, anstatt, anstelle von, au lieu de, en lugar de, en vez de, invece di,
    al posto di, em vez de, in plaats van, zamiast, вместо
  `),
);

/** The same at the start of a run of letters without spaces. */
export const denialBefore: readonly string[] = listed('无, 非, 不含, 無, ノン');

/** Words behind a name that say so. */
export const denialsAfter: readonly string[] = listed(
  'free, frei, freie, freies, freier, vrij, vrije, libre, içermez, içermeyen, siz, sız, フリー, 不使用, なし',
);
