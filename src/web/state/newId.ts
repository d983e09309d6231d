import { cardCode } from '../../core/card/cardCode.ts';

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Whole numbers below `limit` from the browser's own source of chance. */
const chance = {
  integer: (limit: number): number =>
    Math.floor(((crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) / 2 ** 32) * limit),
};

/**
 * An id made where the thing was made, so that sending it twice stores it once. Not `crypto.randomUUID`: a phone that
 * reaches the workshop's computer over plain http does not have it.
 */
export const newId = (): string =>
  Array.from({ length: 22 }, () => letters.charAt(chance.integer(letters.length))).join('');

/** Four signs to cut into a card or print on a label. */
export const newCode = (): string => cardCode(chance);

/** A seed for the order of cutting and the places of cells. */
export const newSeed = (): number => chance.integer(1_000_000);
