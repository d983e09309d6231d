import { seededRandom } from '../../num/seededRandom.ts';
import { cardCode } from './cardCode.ts';

/** A code from a text: the same for the same text, another for another, save one time in 330 000 (FNV-1a, 32 bits). */
export const cardCodeFor = (text: string): string => {
  let hash = 0x811c9dc5;
  for (const sign of Array.from(text)) {
    hash = Math.imul(hash ^ (sign.codePointAt(0) ?? 0), 0x01000193);
  }
  return cardCode(seededRandom(hash));
};
