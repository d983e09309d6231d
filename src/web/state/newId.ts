const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
/** For codes that a person reads off a card or a label: no 0/O, 1/I, 5/S, 8/B, 2/Z. */
const plainLetters = 'ACDEFGHJKLMNPQRTUVWXY34679';

const drawn = (alphabet: string, count: number): string =>
  Array.from(crypto.getRandomValues(new Uint16Array(count)), (n) =>
    alphabet.charAt(n % alphabet.length),
  ).join('');

/**
 * An id made where the thing was made, so that sending it twice stores it once. Not `crypto.randomUUID`: a phone that
 * reaches the workshop's computer over plain http does not have it.
 */
export const newId = (): string => drawn(letters, 22);

/** Four characters to cut into a card or print on a label. */
export const newCode = (): string => drawn(plainLetters, 4);
