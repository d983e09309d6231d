import type { SeededRandom } from '../../num/seededRandom.ts';

/** Letters and figures that are not taken for one another, burnt by a laser or written with a pencil. */
const alphabet = 'ACDEFHJKLMNPRTUVWXY34679';

/** Four signs by which a card is found again: 331 776 of them. */
export const cardCode = (random: Pick<SeededRandom, 'integer'>): string =>
  Array.from({ length: 4 }, () => alphabet.charAt(random.integer(alphabet.length))).join('');

export const isCardCode = (text: string): boolean =>
  text.length === 4 && Array.from(text).every((sign) => alphabet.includes(sign));
