import { browserShelf } from './browserShelf.ts';
import { keepOn } from './shelf.ts';

const key = 'throughcut.partsAhead';
const usual = 200;

/** How many parts were said to lie ahead on this device; the usual number where none were. */
export const keptPartsAhead = (): number => {
  const kept = Number(browserShelf.getItem(key));
  return Number.isInteger(kept) && kept > 0 ? kept : usual;
};

export const keepPartsAhead = (parts: number): void => {
  keepOn(browserShelf, key, String(parts));
};
